package org.flitchbook.sums;

/**
 * One probe's readings in the order of time, each with its uncertainty; levels as in {@link
 * org.flitchbook.measure.Level}, times in milliseconds since 1970.
 */
public interface Curve {

  int size();

  /** The time as written, which is the earliest that it can have been. */
  long earliest(int index);

  /** The latest that it can have been, where the time was written to the minute. */
  long latest(int index);

  long level(int index, Shift shift);

  /** Whether the reading was taken by hand. */
  boolean byHand(int index);

  /** The usual time between two readings; 0 for readings taken by hand alone. */
  long interval();

  /** Whether the time from this reading to the next is longer than 3 intervals and 5 minutes. */
  default boolean gapAfter(int index) {
    long usual = Math.max(3 * interval(), 300_000L);
    return index + 1 < size() && earliest(index + 1) - earliest(index) > usual;
  }
}
