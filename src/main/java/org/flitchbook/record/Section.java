package org.flitchbook.record;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.flitchbook.account.LotAccount.Keeping;
import org.flitchbook.document.Block;
import org.flitchbook.document.Block.Facts;
import org.flitchbook.document.Text;
import org.flitchbook.message.Message;

/** A part of a record. */
abstract class Section extends Phrases {

  static final Message BY = Message.say("record.head.by", "By");
  static final Message BY_HAND = Message.say("record.core.by-hand", "by hand");
  static final Message DEVIATIONS =
      Message.say("record.batch.deviations", "Deviations and remarks");
  static final Message DOUBTS = Message.say("record.batch.doubts", "Data in doubt");
  static final Message ERROR = Message.say("record.instruments.error", "Error");
  static final Message EXPECTED = Message.say("record.head.fault-expected", "Expected");
  static final Message FAULT_FOUND = Message.say("record.head.fault-found", "Found");
  static final Message FOLLOWS = Message.say("record.head.follows", "What follows");
  static final Message FOUND = Message.say("record.head.found", "What was found");
  static final Message ITEM = Message.say("record.head.item", "Item");
  static final Message LEFT_OUT = Message.say("record.chart.left-out", "left out");
  static final Message LIMIT = Message.say("record.head.limit", "Limit");
  static final Message LIMIT_VALUE = Message.say("record.head.limit-value", "Limit value");
  static final Message LOT = Message.say("record.head.lot", "Lot");
  static final Message PLACE = Message.say("record.head.place", "Where");
  static final Message PLAN_SAYS = Message.say("record.head.plan-says", "The plan says");
  static final Message PROBE = Message.say("record.head.probe", "Probe");
  static final Message REMARK = Message.say("record.head.remark", "Remark");
  static final Message STEP = Message.say("record.head.step", "Step");
  static final Message TIME = Message.say("record.head.time", "Time");
  static final Message VALUE = Message.say("record.head.value", "Value");
  static final Message VERDICT = Message.say("record.head.verdict", "Verdict");
  static final Message WARM = Message.say("record.batch.warm", "Time in the warm");
  static final Message WEIGHTS = Message.say("record.weights.weights", "Weights");
  static final Message WHAT = Message.say("record.head.what", "What");
  static final Message WHERE = Message.say("record.head.where", "Where it stands");
  static final Message WHY = Message.say("record.left-out.why", "Why");
  static final Message WITH = Message.say("record.head.with", "With");
  static final Message WORST_VALUE = Message.say("record.worst-value", "Worst value");

  final DayJudged day;

  Section(DayJudged day) {
    super(day.plan());
    this.day = day;
  }

  final Block.Heading heading(Message text) {
    return new Block.Heading(2, say(text));
  }

  final Block.Heading heading(String id, String english, Object... values) {
    return heading(Message.say(id, english, values));
  }

  final Block.Heading subheading(String id, String english) {
    return new Block.Heading(3, say(id, english));
  }

  final Block.Paragraph paragraph(String text) {
    return new Block.Paragraph(text(text, Text.Style.PLAIN));
  }

  final Block.Paragraph strong(String text) {
    return new Block.Paragraph(text(text, Text.Style.STRONG));
  }

  final Block.Paragraph paragraph(String id, String english, Object... values) {
    return paragraph(say(id, english, values));
  }

  /** So that a part is never missing without a word. */
  final Block.Paragraph nothingOf(Message caption) {
    return paragraph("record.nothing-of", "{0}: NOT RECORDED", caption);
  }

  final Block.Paragraph nothingOf(String id, String english) {
    return nothingOf(Message.say(id, english));
  }

  /** An empty value is never left blank. */
  final Facts.Fact fact(String label, String value) {
    return new Facts.Fact(label, text(orNotRecorded(value), Text.Style.PLAIN));
  }

  final Facts.Fact fact(Message label, String value) {
    return fact(say(label), value);
  }

  final Facts.Fact fact(String id, String english, String value) {
    return fact(say(id, english), value);
  }

  final <T> TableBuilder<T> table(Message caption, List<T> items) {
    return new TableBuilder<>(this, say(caption), items);
  }

  final <T> TableBuilder<T> table(String id, String english, List<T> items) {
    return table(Message.say(id, english), items);
  }

  /** {@code 2028-02-24, 2 years from the last shipment}; empty where no rule is known. */
  final String keepUntil(Optional<Keeping> keeping) {
    return keeping.map(this::keepUntil).orElse("");
  }

  private String keepUntil(Keeping keeping) {
    long months = keeping.keep().toTotalMonths();
    String time =
        months % 12 == 0
            ? count("record.keep.years", months / 12, "{0} year", "{0} years")
            : count("record.keep.months", months, "{0} month", "{0} months");
    LocalDate until = keeping.until();
    return keeping.fromShipment()
        ? say("record.keep.from-shipment", "{0}, {1} from the last shipment", until, time)
        : say("record.keep.from-day", "{0}, {1} from the day judged", until, time);
  }

  /** The rule alone, for a record that says elsewhere until when it is kept. */
  final String keepingRule(Optional<Keeping> keeping) {
    return keeping.map(known -> say("record.keep.rule", "Kept by {0}.", known.rule())).orElse("");
  }

  /** The date and its rule, for a record that has no page of facts. */
  final Block.Note keepingNote(Optional<Keeping> keeping) {
    String until = orNotRecorded(keepUntil(keeping));
    return note(say("record.keep.until", "Keep until {0}.", until), keepingRule(keeping));
  }

  /** Small print, of which the second part may be empty. */
  final Block.Note note(String text, String more) {
    return new Block.Note(text((text + " " + more).strip(), Text.Style.PLAIN));
  }

  /** How many faults in the data are open. */
  final String toExplain(int doubts) {
    return count(
        "record.evidence.open", doubts, "{0} doubt to be explained", "{0} doubts to be explained");
  }

  final Block.Caution caution() {
    return new Block.Caution(
        say(
            "record.caution",
            "Curing salt is toxic in excess: weigh it, never spoon it. The limits are those of"
                + " the plan named here; confirm them with the local authority or a process"
                + " authority. This record says which limits were met, not met or not shown. It"
                + " does not say that food is safe, and it replaces no licensed decision."));
  }
}
