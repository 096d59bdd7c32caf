package org.flitchbook.judging;

import static org.flitchbook.message.Message.say;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.stream.Stream;
import org.flitchbook.input.Fault;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Lot.StepTrack;
import org.flitchbook.lot.Stay;
import org.flitchbook.lot.Track;
import org.flitchbook.message.Listing;
import org.flitchbook.reading.Entry;
import org.flitchbook.reading.Moment;
import org.flitchbook.sheet.What;

/**
 * The whole days that a lot was in a step and on which nothing is on file of it or of its place.
 * They are named, and judge nothing: how often is to be read or turned, limits say.
 *
 * @param until the moment judged
 */
record EmptyDays(Lot lot, ZoneId zone, Instant until) {

  static final String RULE = "day without entries";

  List<Fault> notes() {
    return lot.stays().stream().flatMap(stay -> note(stay, days(stay))).toList();
  }

  private Stream<Fault> note(Stay stay, List<LocalDate> days) {
    return days.isEmpty()
        ? Stream.of()
        : Stream.of(
            Fault.note(
                RULE,
                lot.code(),
                stay.into().place(),
                say(
                    "judging.day.empty",
                    "nothing on file on {0}, while it was in {1}",
                    Listing.days(days),
                    stay.step()),
                say("judging.day.each", "what was read and done, on each day of a step")));
  }

  private List<LocalDate> days(Stay stay) {
    LocalDate first = day(stay.into().time().earliest()).plusDays(1);
    LocalDate end = day(end(stay));
    return first.isBefore(end) ? first.datesUntil(end).filter(this::isEmpty).toList() : List.of();
  }

  /** A lot that left is in no step, whether or not its last one was ended in writing. */
  private Instant end(Stay stay) {
    return lot.end(stay.step())
        .or(() -> lot.last(What.DISPATCHED).map(Entry::time))
        .map(Moment::latest)
        .orElse(until);
  }

  private LocalDate day(Instant time) {
    return time.atZone(zone).toLocalDate();
  }

  private boolean isEmpty(LocalDate day) {
    return lot.entries().stream().map(Entry::time).noneMatch(at -> day(at.earliest()).equals(day))
        && lot.tracks().stream().map(StepTrack::track).noneMatch(track -> isRead(track, day));
  }

  private boolean isRead(Track track, LocalDate day) {
    Instant end = day.plusDays(1).atStartOfDay(zone).toInstant().minusMillis(1);
    return track.during(day.atStartOfDay(zone).toInstant(), end).isPresent();
  }
}
