package org.flitchbook.doubt;

import java.util.Comparator;
import java.util.List;
import java.util.OptionalLong;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * What was read of the air around a lot in one step: of the chamber in the smoke, of the cooler in
 * the chill. Readings by hand count where no log was kept.
 *
 * @param near how far in time a reading of the air may lie from one of the core, in ms
 */
record Air(List<ProbeLog> logs, long near) {

  /** Beside a reading near which nothing was read of the air. */
  static final long NONE = Long.MIN_VALUE;

  /**
   * The level nearest in time, at most {@code near} off, of whichever sensor is nearest in level.
   */
  OptionalLong near(long time, long level) {
    return logs.stream()
        .flatMap(log -> near(log, time))
        .min(Comparator.comparing(each -> Math.abs(each - level)))
        .map(OptionalLong::of)
        .orElse(OptionalLong.empty());
  }

  /** The level beside each reading of a core, or {@link #NONE}. */
  long[] beside(ProbeLog core) {
    return IntStream.range(0, core.size())
        .mapToLong(i -> near(core.at(i), core.level(i)).orElse(NONE))
        .toArray();
  }

  private Stream<Long> near(ProbeLog log, long time) {
    int before = log.atOrBefore(time);
    int after = log.atOrAfter(time);
    boolean hasBefore = before >= 0 && time - log.at(before) <= near;
    boolean hasAfter = after < log.size() && log.at(after) - time <= near;
    if (hasBefore && (!hasAfter || time - log.at(before) <= log.at(after) - time)) {
      return Stream.of(log.level(before));
    }
    return hasAfter ? Stream.of(log.level(after)) : Stream.of();
  }
}
