package org.flitchbook.record;

import static org.flitchbook.message.Message.say;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.flitchbook.document.Block;
import org.flitchbook.lot.Lot;
import org.flitchbook.plan.Retention;
import org.flitchbook.sheet.What;

/** Until when a record is kept: from the last shipment, or from the day judged before any. */
final class Keeping {

  private final DayJudged day;
  private final Phrases phrases;
  private final Optional<LocalDate> shipped;

  Keeping(DayJudged day, List<Lot> lots) {
    this.day = day;
    this.phrases = day.phrases();
    this.shipped = lots.stream().flatMap(this::shipped).max(LocalDate::compareTo);
  }

  private Stream<LocalDate> shipped(Lot lot) {
    return lot.all(What.DISPATCHED).stream()
        .map(entry -> LocalDate.parse(phrases.date(entry.time().written())));
  }

  /** {@code 2028-02-24, 2 years from the last shipment}; empty where no rule is known. */
  String until() {
    return day.plan().retention().map(this::until).orElse("");
  }

  private String until(Retention retention) {
    int months = (int) retention.keep().toTotalMonths();
    String time =
        months % 12 == 0
            ? phrases.count("record.keep.years", months / 12, "{0} year", "{0} years")
            : phrases.count("record.keep.months", months, "{0} month", "{0} months");
    LocalDate date = retention.until(shipped.orElse(day.day()));
    return phrases.say(
        shipped.isPresent()
            ? say("record.keep.from-shipment", "{0}, {1} from the last shipment", date, time)
            : say("record.keep.from-day", "{0}, {1} from the day judged", date, time));
  }

  /** The rule alone, for a record that says elsewhere until when it is kept. */
  Optional<String> rule() {
    return day.plan()
        .retention()
        .map(known -> phrases.say("record.keep.rule", "Kept by {0}.", known.rule()));
  }

  /** The date and its rule, for a record that has no page of facts. */
  Block.Note note() {
    String told =
        phrases.say("record.keep.until", "Keep until {0}.", phrases.orNotRecorded(until()));
    return new Block.Note(phrases.bound().of(rule().map(rule -> told + " " + rule).orElse(told)));
  }
}
