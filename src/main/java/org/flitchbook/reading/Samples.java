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

  /** The physical line. */
  int line(int index);
}
