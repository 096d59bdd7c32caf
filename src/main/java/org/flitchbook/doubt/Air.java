package org.flitchbook.doubt;

import java.util.Comparator;
import java.util.List;
import java.util.OptionalLong;
import java.util.stream.Stream;
import org.flitchbook.lot.Lot;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;

/**
 * What was read of the air around a lot in one step: of the chamber in the smoke, of the cooler in
 * the chill. Readings by hand count where no log was kept.
 */
final class Air {

  private static final long NEAR = 300_000;

  private final List<Log> logs;

  private Air(List<Log> logs) {
    this.logs = logs;
  }

  static Air of(Lot lot, Step step) {
    What what = step == Step.SMOKE ? What.CHAMBER_TEMPERATURE : What.COOLER_TEMPERATURE;
    return new Air(
        lot.tracks(what, step).stream()
            .filter(track -> track.interval() > 0)
            .map(Log::new)
            .toList());
  }

  boolean isEmpty() {
    return logs.isEmpty();
  }

  List<Log> logs() {
    return logs;
  }

  /** The level nearest in time, at most 5 minutes off, of whichever sensor is nearest in level. */
  OptionalLong near(long time, long level) {
    return logs.stream()
        .flatMap(log -> near(log, time))
        .min(Comparator.comparing(each -> Math.abs(each - level)))
        .map(OptionalLong::of)
        .orElse(OptionalLong.empty());
  }

  private static Stream<Long> near(Log log, long time) {
    int before = log.atOrBefore(time);
    int after = log.atOrAfter(time);
    boolean hasBefore = before >= 0 && time - log.at(before) <= NEAR;
    boolean hasAfter = after < log.size() && log.at(after) - time <= NEAR;
    if (hasBefore && (!hasAfter || time - log.at(before) <= log.at(after) - time)) {
      return Stream.of(log.level(before));
    }
    return hasAfter ? Stream.of(log.level(after)) : Stream.of();
  }
}
