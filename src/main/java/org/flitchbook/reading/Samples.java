package org.flitchbook.reading;

import java.util.stream.IntStream;

/**
 * The readings of one log column in the order of time, held as plain numbers because a day of
 * 1-second readings of eight probes has hundreds of thousands. Two may have the same time.
 */
public sealed interface Samples permits LoggedSamples, JoinedSamples {

  /** Too few to tell what is usual. */
  int FEW = 5;

  /** A third of the 5 minutes that are no gap yet, so that three of it are none. */
  long SHORT = 100_000;

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
   * between two of one time. Of fewer than five readings nobody can tell what is usual, so that any
   * two more than 5 minutes apart have a gap.
   *
   * @return more than 0
   */
  default long interval() {
    long[] steps =
        IntStream.iterate(1, index -> index < size(), index -> index + 1 + size() / MANY)
            .mapToLong(i -> at(i) - at(i - 1))
            .filter(step -> step > 0)
            .sorted()
            .toArray();
    long median = steps.length == 0 ? SHORT : steps[steps.length / 2];
    return size() < FEW ? Math.min(median, SHORT) : median;
  }
}
