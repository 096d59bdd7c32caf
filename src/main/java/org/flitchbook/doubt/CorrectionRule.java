package org.flitchbook.doubt;

import static org.flitchbook.message.Message.say;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.stream.Stream;
import org.flitchbook.json.Choice;
import org.flitchbook.lot.Lot;
import org.flitchbook.message.Message;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.What;

/**
 * A correction that gives no reason, or that moves what happened to another place or day. What was
 * said of a fault may be corrected later, and to be of another fault.
 */
@Choice("correction to be explained")
record CorrectionRule() implements Finder {

  @Override
  public Stream<Doubt> find(Subject subject) {
    ZoneId zone = subject.plan().establishment().zone();
    return subject.lot().corrections().stream()
        .flatMap(
            each ->
                (each.by().is(What.EXPLAINED)
                        ? withoutReason(each)
                        : Stream.of(withoutReason(each), moved(each), onOtherDay(each, zone))
                            .flatMap(doubts -> doubts))
                    .limit(1));
  }

  private static Stream<Doubt> withoutReason(Lot.Correction correction) {
    return correction.by().note().isBlank()
        ? doubt(correction, "note", say("doubt.correction.no-reason", "no reason in the note"))
        : Stream.of();
  }

  private static Stream<Doubt> moved(Lot.Correction correction) {
    String before = correction.replaced().item();
    String now = correction.by().item();
    return before.isEmpty() || before.equals(now)
        ? Stream.of()
        : doubt(
            correction,
            "item",
            now.isEmpty()
                ? say("doubt.correction.no-item", "no item in place of {0}", before)
                : say("doubt.correction.item", "{0} in place of {1}", now, before));
  }

  private static Stream<Doubt> onOtherDay(Lot.Correction correction, ZoneId zone) {
    LocalDate before = day(correction.replaced(), zone);
    LocalDate now = day(correction.by(), zone);
    return before.equals(now)
        ? Stream.of()
        : doubt(
            correction, "time", say("doubt.correction.day", "{0} in place of {1}", now, before));
  }

  private static LocalDate day(Entry entry, ZoneId zone) {
    return LocalDate.ofInstant(entry.time().earliest(), zone);
  }

  private static Stream<Doubt> doubt(Lot.Correction correction, String column, Message found) {
    return Stream.of(
        new Doubt(
            correction.by().place().column(column),
            say(
                "doubt.correction.found",
                "{0} corrected ({1}): {2}",
                correction.by().what(),
                correction.replaced().place(),
                found),
            say("doubt.correction.expected", "why it was wrong, and the same item and day"),
            say(
                "do.correction-to-be-explained",
                "Say what the entry was corrected from, and who saw it.")));
  }
}
