package org.flitchbook.record;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.flitchbook.document.Block;
import org.flitchbook.lot.Lot;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.measure.Unit;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.What;
import org.flitchbook.sums.Base;
import org.flitchbook.sums.MassBalance;
import org.flitchbook.sums.Worked;
import org.flitchbook.sums.Yields;

/** The weights step by step, the rind taken off, and what became of the last of the weights. */
final class WeightSection {

  private final Lot lot;
  private final Phrases phrases;

  WeightSection(Lot lot, Phrases phrases) {
    this.lot = lot;
    this.phrases = phrases;
  }

  List<Block> blocks() {
    List<Block> blocks = new ArrayList<>();
    blocks.add(weights());
    lot.all(What.GREEN_WEIGHT).forEach(green -> rind(green).ifPresent(blocks::add));
    balance().ifPresent(blocks::add);
    return blocks;
  }

  private Block weights() {
    Grid grid =
        phrases
            .grid("record.weights.weights", "Weights")
            .head("record.weights.after", "After", 10)
            .number("record.weights.weight", "Weight", 8)
            .number("record.weights.of-before", "Of the weight before", 8)
            .number("record.weights.of-green", "Of the green weight", 8)
            .head("record.head.where", "Where it stands", 14);
    for (Entry entry : lot.entries()) {
      if (isWeight(entry)) {
        List<Stage> chain = upTo(entry);
        grid.row(
            name(entry),
            entry.shown(),
            ofTheBefore(chain),
            ofTheGreen(chain, entry),
            entry.place().toString());
      }
    }
    return grid.isEmpty()
        ? phrases.nothingOf(phrases.say("record.weights.weights", "Weights"))
        : grid.table();
  }

  private static boolean isWeight(Entry entry) {
    return entry.is(What.GREEN_WEIGHT) || entry.is(What.WEIGHT) || entry.is(What.GLAZED);
  }

  private String name(Entry entry) {
    return entry.is(What.WEIGHT)
        ? phrases.ofPiece(phrases.word("step", entry.sheet().word()), entry)
        : phrases.what(entry);
  }

  private static String stage(Entry entry) {
    return entry.is(What.WEIGHT) ? entry.sheet().word() : entry.what().word();
  }

  /**
   * The weights of the same piece up to this one, each with its stage; nothing weighed as 0 has a
   * yield. Where the whole lot is weighed, what was weighed in pieces before is added up.
   */
  private List<Stage> upTo(Entry last) {
    List<Entry> all = lot.entries();
    List<Entry> weights =
        all.subList(0, all.indexOf(last) + 1).stream()
            .filter(WeightSection::isWeight)
            .filter(entry -> entry.amount().value().signum() > 0)
            .toList();
    Map<String, List<Entry>> stages = new LinkedHashMap<>();
    weights.forEach(
        entry -> stages.computeIfAbsent(stage(entry), name -> new ArrayList<>()).add(entry));
    return stages.values().stream().flatMap(each -> ofPiece(each, last.piece())).toList();
  }

  /** A weight with what was weighed. */
  private record Stage(boolean green, Quantity weight) {
    static Stage of(Entry entry, Quantity weight) {
      return new Stage(entry.is(What.GREEN_WEIGHT), weight);
    }
  }

  private static Stream<Stage> ofPiece(List<Entry> stage, String piece) {
    List<Entry> own = stage.stream().filter(entry -> entry.piece().equals(piece)).toList();
    return own.isEmpty() && piece.isEmpty()
        ? Stream.of(Stage.of(stage.get(0), total(lastOfEach(stage))))
        : own.stream().map(entry -> Stage.of(entry, entry.amount()));
  }

  private static List<Entry> lastOfEach(List<Entry> entries) {
    Map<String, Entry> last = new LinkedHashMap<>();
    entries.forEach(entry -> last.put(entry.piece(), entry));
    return List.copyOf(last.values());
  }

  private static String ofTheBefore(List<Stage> chain) {
    return yields(chain)
        .map(each -> percent(each.steps().get(each.steps().size() - 1)))
        .orElse("–");
  }

  private static String ofTheGreen(List<Stage> chain, Entry entry) {
    if (entry.is(What.GREEN_WEIGHT)) {
      return "100.0 %";
    }
    int green = 0;
    while (green < chain.size() && !chain.get(green).green()) {
      green++;
    }
    return yields(chain.subList(green, chain.size()))
        .map(each -> percent(each.total()))
        .orElse("–");
  }

  private static Optional<Yields> yields(List<Stage> chain) {
    return chain.size() < 2
        ? Optional.empty()
        : Optional.of(Yields.of(chain.stream().map(Stage::weight).toList()));
  }

  private static String percent(Worked share) {
    return share.value().value().rounded(1) + " %";
  }

  /** Where the piece was weighed with its rind on and the rind by itself. */
  private Optional<Block> rind(Entry green) {
    boolean on =
        of(What.RIND, green).filter(entry -> entry.value().equalsIgnoreCase("on")).isPresent();
    Optional<Quantity> rind = last(What.RIND_WEIGHT, green.piece()).map(Entry::amount);
    return rind.filter(weight -> on && weight.isBelow(green.amount()))
        .map(weight -> phrases.paragraph(rind(green, weight)));
  }

  private String rind(Entry green, Quantity rind) {
    Base base = Base.lessRind(green.amount(), rind);
    Yields left = Yields.of(List.of(green.amount(), base.mass()));
    return phrases.say(
        "record.weights.rind-off",
        "{0}: ({1}) = {2} skin-free, {3} of the green weight; the sums of the cure are reckoned on"
            + " it.",
        phrases.ofPiece(phrases.say("record.weights.rind-taken-off", "Rind taken off"), green),
        base.formula(),
        base.mass().shown(),
        percent(left.total()));
  }

  /** The last statement about the piece that stood when it was weighed. */
  private Optional<Entry> of(What what, Entry green) {
    return lot.all(what).stream()
        .filter(entry -> entry.piece().equals(green.piece()) || entry.piece().isEmpty())
        .filter(entry -> !green.time().isBefore(entry.time()))
        .reduce((earlier, later) -> later);
  }

  private Optional<Entry> last(What what, String piece) {
    return lot.all(what).stream()
        .filter(entry -> entry.piece().equals(piece))
        .reduce((earlier, later) -> later);
  }

  /** What was packed, cut off and thrown away against the last weight. */
  private Optional<Block> balance() {
    return parted().map(phrases::paragraph);
  }

  /** The same in words; empty where nothing was packed, cut off or thrown away. */
  Optional<String> parted() {
    boolean parted =
        List.of(What.PACKED, What.ENDS, What.WASTE, What.SAMPLE).stream()
            .anyMatch(what -> lot.first(what).isPresent());
    return lot.last(What.WEIGHT).filter(last -> parted).map(this::balance);
  }

  private String balance(Entry last) {
    MassBalance balance =
        new MassBalance(
            weighed(last), sum(What.PACKED), sum(What.ENDS), sum(What.WASTE), sum(What.SAMPLE));
    return phrases.say(
        "record.weights.balance",
        "Mass balance after the {0}: {1} = {2} unexplained, {3} of the last weight.",
        phrases.word("step", last.sheet().word()),
        balance.unexplained().formula(),
        balance.unexplained().value().shown(),
        balance.unexplainedShare().value().shown());
  }

  /** The last weight; of a lot in pieces what each weighed after that step. */
  private Quantity weighed(Entry last) {
    return total(
        lot.all(What.WEIGHT).stream()
            .filter(entry -> entry.sheet() == last.sheet())
            .filter(entry -> entry.piece().isEmpty() == last.piece().isEmpty())
            .filter(entry -> last(entry).equals(entry))
            .toList());
  }

  private Entry last(Entry weight) {
    return lot.all(What.WEIGHT).stream()
        .filter(entry -> entry.sheet() == weight.sheet())
        .filter(entry -> entry.piece().equals(weight.piece()))
        .reduce((earlier, later) -> later)
        .orElse(weight);
  }

  private Quantity sum(What what) {
    return total(lot.all(what));
  }

  private static Quantity total(List<Entry> entries) {
    if (entries.size() == 1) {
      return entries.get(0).amount();
    }
    Ratio grams =
        entries.stream().map(entry -> entry.amount().inBase()).reduce(Ratio.ZERO, Ratio::plus);
    return new Quantity(grams, Unit.GRAM);
  }
}
