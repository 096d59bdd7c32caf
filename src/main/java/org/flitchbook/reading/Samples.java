package org.flitchbook.reading;

import java.util.stream.IntStream;
import org.flitchbook.practice.Practice;

/**
 * The readings of one log column in the order of time, held as plain numbers because a day of
 * 1-second readings of eight probes has hundreds of thousands. Two may have the same time.
 */
public sealed interface Samples permits LogSeries.LoggedSamples, Joining.JoinedSamples {

  /** Of so many readings every one is looked at for what is usual, of more only as many. */
  int MANY = 50_000;

  int size();

  /** Milliseconds since 1970-01-01T00:00Z, as written (the earliest time it can have been). */
  long at(int index);

  /** See {@link org.flitchbook.measure.Level}. */
  long level(int index);

  /** The log's name within the book. */
  String file(int index);

  /** The physical line. */
  int line(int index);

  /**
   * The usual time between two readings in ms, which tells a gap: the median, without the steps
   * between two of one time; of few readings it is no longer than that so many of it are no gap.
   *
   * @return more than 0
   */
  default long interval(Practice.Gap gap) {
    long[] steps =
        IntStream.iterate(1, index -> index < size(), index -> index + 1 + size() / MANY)
            .mapToLong(i -> at(i) - at(i - 1))
            .filter(step -> step > 0)
            .sorted()
            .toArray();
    long few = gap.shortInterval();
    long median = steps.length == 0 ? few : steps[steps.length / 2];
    return size() < gap.fewReadings() ? Math.min(median, few) : median;
  }
}
