package org.flitchbook.record;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.flitchbook.account.LotAccount.HeldMass;
import org.flitchbook.check.Judgement;
import org.flitchbook.document.Block;
import org.flitchbook.document.Block.Facts;
import org.flitchbook.document.Block.Sum;
import org.flitchbook.measure.Quantity;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.What;

/**
 * What was done about the deviations of a lot: what had left, the hold, the parts of 9 CFR 417.3(a)
 * or, where the plan has no action for it, of (b), and the disposition to the gram. Where nothing
 * is on file there is ruled room to write it by hand.
 */
final class ActionSection extends LotSection {

  private static final int LINES = 2;
  private static final int LINES_TO_CLOSE = 1;

  ActionSection(DayJudged day, Judgement judgement) {
    super(day, judgement);
  }

  List<Block> blocks() {
    boolean foreseen =
        judgement.deviations().stream().allMatch(f -> planned(f.limit()).isPresent());
    String held =
        foreseen
            ? say("record.action.held", "Held: what, how much, where, tag")
            : say("record.action.segregated", "1. Segregated and held: what, how much, where, tag");
    return new Blocks()
        .add(subheading("record.action.hold", "Hold, and what has left already"))
        .add(left())
        .add(part(held, What.HELD, LINES))
        .add(foreseen ? foreseen() : unforeseen())
        .add(balance(account.held()))
        .add(part(say("record.action.closed", "Verified and closed"), What.CLOSED, LINES_TO_CLOSE))
        .list();
  }

  private List<Block> foreseen() {
    return List.of(
        subheading("record.action.planned", "Corrective action (9 CFR 417.3(a))"),
        part(say("record.action.cause", "1. Cause found and removed"), What.CAUSE, LINES),
        part(say("record.action.control", "2. Control regained"), What.CONTROL_REGAINED, LINES),
        part(say("record.action.prevention", "3. Recurrence prevented"), What.PREVENTION, LINES),
        part(
            say("record.action.disposition", "4. Disposition, to the last gram"),
            What.DISPOSITION,
            LINES));
  }

  private List<Block> unforeseen() {
    return List.of(
        subheading(
            "record.action.unforeseen",
            "Corrective action that the plan did not foresee (9 CFR 417.3(b))"),
        part(say("record.action.evaluated", "2. Acceptability reviewed"), What.EVALUATED, LINES),
        part(
            say("record.action.disposition-unforeseen", "3. Disposition, to the last gram"),
            What.DISPOSITION,
            LINES),
        part(
            say("record.action.reassessed", "4. Plan reassessed by a trained person"),
            What.REASSESSED,
            LINES));
  }

  private Block left() {
    String label = say("record.action.left", "Left already");
    String nothing =
        say("record.action.nothing-left", "nothing of this lot is on file as dispatched");
    return onFile(label, What.DISPATCHED).orElse(new Facts(1, List.of(fact(label, nothing))));
  }

  /** What is on file of a part, or room to write it. */
  private Block part(String label, What what, int lines) {
    return onFile(label, what)
        .orElse(
            new Block.Blank(
                say("record.nothing-of", "{0}: NOT RECORDED", label),
                lines,
                List.of(
                    say("record.action.by", "By"),
                    say("record.action.date", "Date"),
                    say("record.action.time", "Time"))));
  }

  private Optional<Block> onFile(String label, What what) {
    List<Entry> entries = lot.all(what);
    return entries.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new Facts(1, entries.stream().map(entry -> fact(label, told(entry))).toList()));
  }

  private String told(Entry entry) {
    String parts = joined(", ", entry.shown(), entry.item(), entry.note());
    String who = orNotRecorded(entry.by());
    return say("record.action.told", "{0} ({1}, {2})", parts, who, time(entry)).strip();
  }

  /** The held mass less each disposition; what is left must be nothing. */
  private Optional<Block> balance(HeldMass held) {
    List<Sum.Line> lines = new ArrayList<>();
    if (!held.dispositions().isEmpty()) {
      held.mass().ifPresent(mass -> lines.add(line(say("record.action.mass-held", "Held"), mass)));
    }
    held.dispositions().stream()
        .filter(entry -> entry.quantity().isPresent())
        .forEach(entry -> lines.add(takenOff(entry)));
    String rest = say("record.action.still-held", "Still to be disposed of");
    return held.left()
        .map(
            left -> {
              lines.add(line(rest, left));
              return new Sum(lines);
            });
  }

  private Sum.Line line(String label, Quantity mass) {
    return new Sum.Line(label, "", unbroken(mass.shown()));
  }

  private Sum.Line takenOff(Entry disposition) {
    String what = disposition.item().isEmpty() ? disposition.note() : disposition.item();
    return new Sum.Line(orNotRecorded(what), "", "− " + disposition.shown());
  }
}
