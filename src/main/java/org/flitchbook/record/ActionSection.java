package org.flitchbook.record;

import static org.flitchbook.message.Message.say;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.flitchbook.check.Judgement;
import org.flitchbook.document.Block;
import org.flitchbook.document.Facts;
import org.flitchbook.document.Sum;
import org.flitchbook.document.Text;
import org.flitchbook.lot.Lot;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.measure.Unit;
import org.flitchbook.message.Message;
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
    head(blocks, say("record.action.hold", "Hold, and what has left already"));
    blocks.add(left());
    blocks.add(
        part(
            isForeseen()
                ? say("record.action.held", "Held: what, how much, where, tag")
                : say(
                    "record.action.segregated",
                    "1. Segregated and held: what, how much, where, tag"),
            What.HELD));
    if (isForeseen()) {
      head(blocks, say("record.action.planned", "Corrective action (9 CFR 417.3(a))"));
      blocks.add(part(say("record.action.cause", "1. Cause found and removed"), What.CAUSE));
      blocks.add(part(say("record.action.control", "2. Control regained"), What.CONTROL_REGAINED));
      blocks.add(part(say("record.action.prevention", "3. Recurrence prevented"), What.PREVENTION));
      blocks.add(
          part(
              say("record.action.disposition", "4. Disposition, to the last gram"),
              What.DISPOSITION));
    } else {
      head(
          blocks,
          say(
              "record.action.unforeseen",
              "Corrective action that the plan did not foresee (9 CFR 417.3(b))"));
      blocks.add(part(say("record.action.evaluated", "2. Acceptability reviewed"), What.EVALUATED));
      blocks.add(
          part(
              say("record.action.disposition-unforeseen", "3. Disposition, to the last gram"),
              What.DISPOSITION));
      blocks.add(
          part(
              say("record.action.reassessed", "4. Plan reassessed by a trained person"),
              What.REASSESSED));
    }
    balance().ifPresent(blocks::add);
    blocks.add(
        part(say("record.action.closed", "Verified and closed"), What.CLOSED, LINES_TO_CLOSE));
    return blocks;
  }

  private void head(List<Block> blocks, Message text) {
    blocks.add(new Block.Heading(3, phrases.say(text)));
  }

  /** Whether the plan says for each of the deviations what to do. */
  private boolean isForeseen() {
    return judgement.deviations().stream()
        .allMatch(finding -> Phrases.planned(finding.limit()).isPresent());
  }

  private Block left() {
    List<Entry> gone = lot.all(What.DISPATCHED);
    String nothing =
        phrases.say("record.action.nothing-left", "nothing of this lot is on file as dispatched");
    return gone.isEmpty()
        ? new Facts(
            1,
            List.of(
                new Facts.Fact(
                    phrases.say("record.action.left", "Left already"), Text.of(nothing))))
        : facts(gone, phrases.say("record.action.left", "Left already"));
  }

  /** What is on file of a part, or room to write it. */
  private Block part(Message caption, What what) {
    return part(caption, what, LINES);
  }

  private Block part(Message caption, What what, int lines) {
    List<Entry> entries = lot.all(what);
    return entries.isEmpty()
        ? new Block.Blank(
            phrases.say("record.nothing-of", "{0}: NOT RECORDED", phrases.say(caption)),
            lines,
            slots())
        : facts(entries, phrases.say(caption));
  }

  private List<String> slots() {
    return List.of(
        phrases.say("record.action.by", "By"),
        phrases.say("record.action.date", "Date"),
        phrases.say("record.action.time", "Time"));
  }

  private Facts facts(List<Entry> entries, String label) {
    return new Facts(
        1,
        entries.stream()
            .map(entry -> new Facts.Fact(label, phrases.bound().of(told(entry))))
            .toList());
  }

  private String told(Entry entry) {
    List<String> parts = new ArrayList<>(List.of(entry.shown(), entry.item(), entry.note()));
    parts.removeIf(String::isEmpty);
    String who = phrases.orNotRecorded(entry.by());
    String when = phrases.time(entry.time().written());
    return phrases
        .say("record.action.told", "{0} ({1}, {2})", String.join(", ", parts), who, when)
        .strip();
  }

  /** The held mass less each disposition; what is left must be nothing. */
  private Optional<Block> balance() {
    Optional<Quantity> whole = held();
    if (whole.isEmpty()) {
      return Optional.empty();
    }
    List<Sum.Line> lines = new ArrayList<>();
    if (!lot.all(What.DISPOSITION).isEmpty()) {
      lines.add(
          new Sum.Line(phrases.say("record.action.mass-held", "Held"), "", shown(whole.get())));
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
    lines.add(
        new Sum.Line(
            phrases.say("record.action.still-held", "Still to be disposed of"), "", shown(rest)));
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
