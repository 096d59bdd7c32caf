package org.flitchbook.record;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.flitchbook.check.Judgement;
import org.flitchbook.document.Blank;
import org.flitchbook.document.Block;
import org.flitchbook.document.Fact;
import org.flitchbook.document.Facts;
import org.flitchbook.document.Heading;
import org.flitchbook.document.Sum;
import org.flitchbook.document.Text;
import org.flitchbook.lot.Lot;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.measure.Unit;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.What;

/**
 * What was done about the deviations of a lot: what had left, the hold, the parts of 9 CFR 417.3(a)
 * or, where the plan has no action for it, of (b), and the disposition to the gram. Where nothing
 * is on file there is ruled room to write it by hand.
 */
final class ActionSection {

  private static final int LINES = 2;
  private static final int LINES_TO_CLOSE = 1;

  private final Judgement judgement;
  private final Lot lot;
  private final Phrases phrases;

  ActionSection(DayJudged day, Judgement judgement) {
    this.judgement = judgement;
    this.lot = judgement.lot();
    this.phrases = day.phrases();
  }

  List<Block> blocks() {
    List<Block> blocks = new ArrayList<>();
    head(blocks, "record.action.hold");
    blocks.add(left());
    blocks.add(part(isForeseen() ? "record.action.held" : "record.action.segregated", What.HELD));
    if (isForeseen()) {
      head(blocks, "record.action.planned");
      blocks.add(part("record.action.cause", What.CAUSE));
      blocks.add(part("record.action.control", What.CONTROL_REGAINED));
      blocks.add(part("record.action.prevention", What.PREVENTION));
      blocks.add(part("record.action.disposition", What.DISPOSITION));
    } else {
      head(blocks, "record.action.unforeseen");
      blocks.add(part("record.action.evaluated", What.EVALUATED));
      blocks.add(part("record.action.disposition-unforeseen", What.DISPOSITION));
      blocks.add(part("record.action.reassessed", What.REASSESSED));
    }
    balance().ifPresent(blocks::add);
    blocks.add(part("record.action.closed", What.CLOSED, LINES_TO_CLOSE));
    return blocks;
  }

  private void head(List<Block> blocks, String key) {
    blocks.add(new Heading(3, phrases.say(key)));
  }

  /** Whether the plan says for each of the deviations what to do. */
  private boolean isForeseen() {
    return judgement.deviations().stream()
        .allMatch(finding -> Phrases.planned(finding.limit()).isPresent());
  }

  private Block left() {
    List<Entry> gone = lot.all(What.DISPATCHED);
    String nothing = phrases.say("record.action.nothing-left");
    return gone.isEmpty()
        ? new Facts(1, List.of(new Fact(phrases.say("record.action.left"), Text.of(nothing))))
        : facts(gone, phrases.say("record.action.left"));
  }

  /** What is on file of a part, or room to write it. */
  private Block part(String key, What what) {
    return part(key, what, LINES);
  }

  private Block part(String key, What what, int lines) {
    List<Entry> entries = lot.all(what);
    return entries.isEmpty()
        ? new Blank(phrases.say("record.nothing-of", phrases.say(key)), lines, slots())
        : facts(entries, phrases.say(key));
  }

  private List<String> slots() {
    return List.of(
        phrases.say("record.action.by"),
        phrases.say("record.action.date"),
        phrases.say("record.action.time"));
  }

  private Facts facts(List<Entry> entries, String label) {
    return new Facts(
        1,
        entries.stream().map(entry -> new Fact(label, phrases.bound().of(told(entry)))).toList());
  }

  private String told(Entry entry) {
    List<String> parts = new ArrayList<>(List.of(entry.shown(), entry.item(), entry.note()));
    parts.removeIf(String::isEmpty);
    String who = phrases.orNotRecorded(entry.by());
    String when = phrases.time(entry.time().written());
    return phrases.say("record.action.told", String.join(", ", parts), who, when).strip();
  }

  /** The held mass less each disposition; what is left must be nothing. */
  private Optional<Block> balance() {
    Optional<Quantity> whole = held();
    if (whole.isEmpty()) {
      return Optional.empty();
    }
    List<Sum.Line> lines = new ArrayList<>();
    if (!lot.all(What.DISPOSITION).isEmpty()) {
      lines.add(new Sum.Line(phrases.say("record.action.mass-held"), "", shown(whole.get())));
    }
    Ratio left = whole.get().inBase();
    for (Entry entry : lot.all(What.DISPOSITION)) {
      if (entry.quantity().isPresent()) {
        left = left.minus(entry.amount().inBase());
        String what = entry.item().isEmpty() ? entry.note() : entry.item();
        lines.add(new Sum.Line(phrases.orNotRecorded(what), "", "− " + entry.shown()));
      }
    }
    Quantity rest = new Quantity(left, Unit.GRAM);
    lines.add(new Sum.Line(phrases.say("record.action.still-held"), "", shown(rest)));
    return Optional.of(new Sum(lines));
  }

  private String shown(Quantity mass) {
    return phrases.bound().bound(mass.shown());
  }

  /** What was written down as held, else the last weight. */
  private Optional<Quantity> held() {
    List<Quantity> held =
        lot.all(What.HELD).stream().flatMap(entry -> entry.quantity().stream()).toList();
    return held.isEmpty()
        ? lot.last(What.WEIGHT).map(Entry::amount)
        : Optional.of(
            new Quantity(
                held.stream().map(Quantity::inBase).reduce(Ratio.ZERO, Ratio::plus), Unit.GRAM));
  }
}
