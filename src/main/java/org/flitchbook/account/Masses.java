package org.flitchbook.account;

import static org.flitchbook.sheet.What.DESTROYED;
import static org.flitchbook.sheet.What.DISPATCHED;
import static org.flitchbook.sheet.What.DISPOSITION;
import static org.flitchbook.sheet.What.ENDS;
import static org.flitchbook.sheet.What.GLAZED;
import static org.flitchbook.sheet.What.GREEN_WEIGHT;
import static org.flitchbook.sheet.What.HELD;
import static org.flitchbook.sheet.What.PACKED;
import static org.flitchbook.sheet.What.RETURNED;
import static org.flitchbook.sheet.What.RIND;
import static org.flitchbook.sheet.What.RIND_WEIGHT;
import static org.flitchbook.sheet.What.SAMPLE;
import static org.flitchbook.sheet.What.WASTE;
import static org.flitchbook.sheet.What.WEIGHT;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BinaryOperator;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.flitchbook.account.LotAccount.RindOff;
import org.flitchbook.account.LotAccount.Yield;
import org.flitchbook.input.Place;
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

/** The masses of a lot: its weights step by step, and what became of the last of them. */
record Masses(Lot lot) {

  private static final Quantity WHOLE = Quantity.of(100, Unit.PERCENT);

  List<Yield> yields() {
    return lot.entries().stream().filter(Masses::isWeight).map(this::yieldOf).toList();
  }

  private static boolean isWeight(Entry entry) {
    return entry.is(GREEN_WEIGHT) || entry.is(WEIGHT) || entry.is(GLAZED);
  }

  private Yield yieldOf(Entry entry) {
    List<Stage> chain = upTo(entry);
    List<Stage> green = chain.stream().dropWhile(stage -> !stage.green()).toList();
    return new Yield(
        entry,
        yields(chain).map(Yields::steps).map(steps -> steps.get(steps.size() - 1).value()),
        entry.is(GREEN_WEIGHT)
            ? Optional.of(WHOLE)
            : yields(green).map(Yields::total).map(Worked::value));
  }

  private static Optional<Yields> yields(List<Stage> chain) {
    return chain.size() < 2
        ? Optional.empty()
        : Optional.of(Yields.of(chain.stream().map(Stage::weight).toList()));
  }

  /** A weight with what was weighed. */
  private record Stage(boolean green, Quantity weight) {
    static Stage of(Entry entry, Quantity weight) {
      return new Stage(entry.is(GREEN_WEIGHT), weight);
    }
  }

  /**
   * The weights of the same piece up to this one, each with its stage; nothing weighed as 0 has a
   * yield. Where the whole lot is weighed, what was weighed in pieces before is added up.
   */
  private List<Stage> upTo(Entry last) {
    List<Entry> all = lot.entries();
    Map<String, List<Entry>> stages = new LinkedHashMap<>();
    all.subList(0, all.indexOf(last) + 1).stream()
        .filter(Masses::isWeight)
        .filter(entry -> entry.amount().value().signum() > 0)
        .forEach(e -> stages.computeIfAbsent(stage(e), name -> new ArrayList<>()).add(e));
    return stages.values().stream().flatMap(each -> ofPiece(each, last.piece())).toList();
  }

  private static String stage(Entry entry) {
    return entry.is(WEIGHT) ? entry.sheet().word() : entry.what().word();
  }

  private static Stream<Stage> ofPiece(List<Entry> stage, String piece) {
    List<Entry> own = stage.stream().filter(entry -> entry.piece().equals(piece)).toList();
    return own.isEmpty() && piece.isEmpty()
        ? Stream.of(Stage.of(stage.get(0), total(lastOfEachPiece(stage))))
        : own.stream().map(entry -> Stage.of(entry, entry.amount()));
  }

  private static List<Entry> lastOfEachPiece(List<Entry> entries) {
    Map<String, Entry> last = new LinkedHashMap<>();
    entries.forEach(entry -> last.put(entry.piece(), entry));
    return List.copyOf(last.values());
  }

  /** Of each piece that was weighed with its rind on, and the rind by itself. */
  List<RindOff> rinds() {
    return lot.all(GREEN_WEIGHT).stream().flatMap(green -> rind(green).stream()).toList();
  }

  private Optional<RindOff> rind(Entry green) {
    boolean on =
        last(RIND, entry -> isStatedOf(green, entry))
            .filter(entry -> entry.value().equalsIgnoreCase("on"))
            .isPresent();
    return last(RIND_WEIGHT, entry -> entry.piece().equals(green.piece()))
        .map(Entry::amount)
        .filter(rind -> on && rind.isBelow(green.amount()))
        .map(rind -> Base.lessRind(green.amount(), rind))
        .map(base -> new RindOff(green, base, share(base.mass(), green.amount())));
  }

  /** The last statement about the piece that stood when it was weighed counts. */
  private static boolean isStatedOf(Entry green, Entry rind) {
    return (rind.piece().equals(green.piece()) || rind.piece().isEmpty())
        && !green.time().isBefore(rind.time());
  }

  private Optional<Entry> last(What what, Predicate<Entry> wanted) {
    return lot.all(what).stream().filter(wanted).reduce((earlier, later) -> later);
  }

  private static Quantity share(Quantity part, Quantity whole) {
    return Yields.of(List.of(whole, part)).total().value();
  }

  /** Of the last weight; empty where nothing was packed, cut off or thrown away. */
  Optional<LotAccount.PackedBalance> balance() {
    boolean parted =
        Stream.of(PACKED, ENDS, WASTE, SAMPLE).anyMatch(what -> lot.first(what).isPresent());
    return lot.last(WEIGHT).filter(last -> parted).map(this::balance);
  }

  private LotAccount.PackedBalance balance(Entry last) {
    List<Entry> weighed = weighed(last);
    MassBalance masses =
        new MassBalance(
            total(weighed),
            total(lot.all(PACKED)),
            total(lot.all(ENDS)),
            total(lot.all(WASTE)),
            total(lot.all(SAMPLE)));
    return new LotAccount.PackedBalance(
        last,
        masses,
        masses.unexplained(),
        masses.unexplainedShare().value(),
        places(weighed, PACKED, ENDS, WASTE, SAMPLE));
  }

  /** The last weight; of a lot in pieces what each weighed after that step. */
  private List<Entry> weighed(Entry last) {
    return lastOfEachPiece(
        lot.all(WEIGHT).stream()
            .filter(entry -> entry.sheet() == last.sheet())
            .filter(entry -> entry.piece().isEmpty() == last.piece().isEmpty())
            .toList());
  }

  LotAccount.Distribution distribution() {
    Optional<Quantity> away = with(sum(PACKED), Ratio::minus, sum(DISPATCHED));
    return new LotAccount.Distribution(
        sum(GREEN_WEIGHT),
        sum(PACKED),
        sum(DISPATCHED),
        sum(RETURNED),
        sum(DESTROYED),
        with(with(away, Ratio::plus, sum(RETURNED)), Ratio::minus, sum(DESTROYED)),
        places(lot.all(GREEN_WEIGHT), PACKED, DISPATCHED, RETURNED, DESTROYED));
  }

  private static Optional<Quantity> with(
      Optional<Quantity> one, BinaryOperator<Ratio> sum, Optional<Quantity> other) {
    return one.flatMap(a -> other.map(b -> grams(sum.apply(a.inBase(), b.inBase()))));
  }

  LotAccount.HeldMass held() {
    List<Entry> held = withMass(HELD);
    Optional<Quantity> mass =
        held.isEmpty()
            ? lot.last(WEIGHT).map(Entry::amount)
            : Optional.of(grams(total(held).inBase()));
    Ratio disposed = total(withMass(DISPOSITION)).inBase();
    return new LotAccount.HeldMass(
        mass, lot.all(DISPOSITION), mass.map(whole -> grams(whole.inBase().minus(disposed))));
  }

  private List<Entry> withMass(What what) {
    return lot.all(what).stream().filter(entry -> entry.quantity().isPresent()).toList();
  }

  /** In g; 0 g of none; empty where one of them has no mass. */
  private Optional<Quantity> sum(What what) {
    List<Entry> entries = lot.all(what);
    return withMass(what).size() == entries.size()
        ? Optional.of(grams(total(entries).inBase()))
        : Optional.empty();
  }

  /** Of entries that all have a mass: in g, or as it is written where there is but one. */
  private static Quantity total(List<Entry> entries) {
    return entries.size() == 1
        ? entries.get(0).amount()
        : grams(
            entries.stream().map(entry -> entry.amount().inBase()).reduce(Ratio.ZERO, Ratio::plus));
  }

  private static Quantity grams(Ratio grams) {
    return new Quantity(grams, Unit.GRAM);
  }

  private List<Place> places(List<Entry> weighed, What... whats) {
    return Stream.concat(weighed.stream(), Stream.of(whats).flatMap(what -> lot.all(what).stream()))
        .map(Entry::place)
        .toList();
  }
}
