package org.flitchbook.doubt;

import static org.flitchbook.message.Message.say;

import java.util.Comparator;
import java.util.Optional;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import org.flitchbook.input.Place;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Track;
import org.flitchbook.message.Message;
import org.flitchbook.reading.Entry;
import org.flitchbook.sums.Shift;

/**
 * Another reading that an explanation names, by hand or of another probe, beside a log in doubt.
 *
 * @param log the log in doubt
 * @param track that of the reading
 */
record NamedReading(Track log, Track track, int index) {

  /** The reading at a place; empty where there is none that is not the log's own. */
  static Optional<NamedReading> of(Subject subject, Track log, Place named) {
    return subject.lot().tracks().stream()
        .map(Lot.StepTrack::track)
        .filter(track -> track.what() == log.what())
        .flatMap(
            track ->
                IntStream.range(0, track.size())
                    .filter(i -> isAt(track.place(i), named))
                    .filter(i -> !track.origin().equals(log.origin()) || track.byHand(i))
                    .mapToObj(i -> new NamedReading(log, track, i)))
        .findFirst();
  }

  private static boolean isAt(Place place, Place named) {
    return place.isSameLine(named)
        && (named.column().isEmpty() || place.column().equals(named.column()));
  }

  static Message none(Track log, Place named) {
    return say(
        "doubt.evidence.no-reading",
        "{0} is no reading of another {1} of the lot",
        named,
        log.what());
  }

  long at() {
    return track.earliest(index);
  }

  Place place() {
    return track.place(index);
  }

  Optional<Entry> entry() {
    return track.entry(index);
  }

  /** Another probe of the same logger is another probe all the same. */
  boolean isBySameInstrument() {
    return entry().filter(entry -> entry.instrument().equals(log.instrument())).isPresent();
  }

  /** How far in time a reading of the log is from it, in ms. */
  long apart(int logged) {
    return Math.abs(log.earliest(logged) - at());
  }

  boolean isWithin(long millis, long time) {
    return Math.abs(at() - time) <= millis;
  }

  /** The log's reading that is nearest to it in time, of those that count. */
  Optional<Integer> nearest(IntPredicate counts) {
    return nearest(counts, at());
  }

  private Optional<Integer> nearest(IntPredicate counts, long time) {
    return IntStream.range(0, log.size())
        .filter(i -> !log.byHand(i) && counts.test(i))
        .boxed()
        .min(Comparator.comparing(i -> Math.abs(log.earliest(i) - time)));
  }

  /** Whether one true value is within the uncertainty of both. */
  boolean agrees(int logged) {
    return !isAbove(logged) && !isBelow(logged);
  }

  boolean isAbove(int logged) {
    return track.level(index, Shift.DOWN) > log.level(logged, Shift.UP);
  }

  boolean isBelow(int logged) {
    return track.level(index, Shift.UP) < log.level(logged, Shift.DOWN);
  }

  /** Whether it agrees with the log no more so long before it, or after it where that is later. */
  boolean isApartFrom(long later) {
    return nearest(i -> true, at() + later).filter(logged -> !agrees(logged)).isPresent();
  }
}
