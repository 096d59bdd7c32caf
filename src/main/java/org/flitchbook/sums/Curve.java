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
    return index + 1 < size() && isGap(index, index + 1);
  }

  private boolean isGap(int from, int to) {
    return earliest(to) - earliest(from) > Math.max(3 * interval(), 300_000L);
  }

  /**
   * Whether a reading may count for the product: one of the log, or one by hand where the log was
   * silent or none was kept. One by hand beside a log that goes on can only count against it, since
   * it may be of another place.
   */
  default boolean stands(int index) {
    if (!byHand(index) || interval() == 0) {
      return true;
    }
    int before = index;
    while (before >= 0 && byHand(before)) {
      before--;
    }
    int after = index;
    while (after < size() && byHand(after)) {
      after++;
    }
    return before < 0 || after == size() || isGap(before, after);
  }
}
