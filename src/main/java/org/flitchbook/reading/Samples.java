package org.flitchbook.reading;

/**
 * The readings of one log column in the order of time, held as plain arrays because a day of
 * 1-second readings of eight probes has hundreds of thousands.
 */
public sealed interface Samples permits LoggedSamples {

  int size();

  /** Milliseconds since 1970-01-01T00:00Z, as written (the earliest time it can have been). */
  long at(int index);

  /** See {@link org.flitchbook.measure.Level}. */
  long level(int index);

  /**
   * The usual time between two readings in ms, which tells a gap: the median. Of fewer than five
   * readings nobody can tell what is usual, so that any two more than 5 minutes apart have a gap.
   *
   * @return more than 0
   */
  long interval();

  /** The physical line. */
  int line(int index);
}
