package org.flitchbook.doubt;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
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
  Optional<Long> near(long time, long level) {
    return logs.stream()
        .flatMap(log -> near(log, time))
        .min(Comparator.comparing(each -> Math.abs(each - level)));
  }

  /** The level beside each reading of a core, or {@link #NONE}. */
  long[] beside(ProbeLog core) {
    return IntStream.range(0, core.size())
        .mapToLong(i -> near(core.at(i), core.level(i)).orElse(NONE))
        .toArray();
  }

  private Stream<Long> near(ProbeLog log, long time) {
    return Stream.of(log.atOrBefore(time), log.atOrAfter(time))
        .filter(i -> i >= 0 && i < log.size() && Math.abs(log.at(i) - time) <= near)
        .min(Comparator.comparing(i -> Math.abs(log.at(i) - time)))
        .map(log::level)
        .stream();
  }
}
