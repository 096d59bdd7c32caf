package org.flitchbook.sums;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.function.IntPredicate;

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

  /** Whether it repeats the one before it: by hand, at the same time, with the same instrument. */
  default boolean isWrittenTwice(int index) {
    return false;
  }

  /** The usual time between two readings; 0 for readings taken by hand alone. */
  long interval();

  /** The longest time between two readings in ms that is no gap. */
  long longestStep();

  /** The same between these two readings of the log. */
  default long longestStep(int from, int to) {
    return longestStep();
  }

  /** Whether there is a gap between this reading and the next. */
  default boolean gapAfter(int index) {
    return index + 1 < size() && isGap(index, index + 1);
  }

  private boolean isGap(int from, int to) {
    return earliest(to) - earliest(from) > longestStep(from, to);
  }

  /** The last reading of the log at or before this one; −1 where there is none. */
  default int loggedAtOrBefore(int index) {
    int before = index;
    while (before >= 0 && byHand(before)) {
      before--;
    }
    return before;
  }

  /** The first reading of the log at or after this one; the size where there is none. */
  default int loggedAtOrAfter(int index) {
    int after = index;
    while (after < size() && byHand(after)) {
      after++;
    }
    return after;
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
    int before = loggedAtOrBefore(index);
    int after = loggedAtOrAfter(index);
    return before < 0 || after == size() || isGap(before, after);
  }

  /** The gaps of the log; readings by hand bridge one, but it is still a gap. */
  default List<Gap> gaps() {
    List<Gap> gaps = new ArrayList<>();
    for (int i = 0; i < size() && interval() > 0; i++) {
      int after = loggedAtOrAfter(i + 1);
      if (!byHand(i) && after < size() && isGap(i, after)) {
        gaps.add(new Gap(i, after));
      }
    }
    return gaps;
  }

  /** The first of the highest readings that count, or of the lowest. */
  default OptionalInt farthest(Shift shift, boolean up, IntPredicate counts) {
    OptionalInt farthest = OptionalInt.empty();
    long best = 0;
    for (int i = 0; i < size(); i++) {
      if (counts.test(i)) {
        long level = level(i, shift);
        if (farthest.isEmpty() || (up ? level > best : level < best)) {
          farthest = OptionalInt.of(i);
          best = level;
        }
      }
    }
    return farthest;
  }

  /** Readings that follow each other, the last included. */
  record Run(int first, int last) {}

  /** The readings that fulfil a condition, in runs as long as they come; some readings end one. */
  default List<Run> runs(IntPredicate fulfils, IntPredicate ends) {
    List<Run> runs = new ArrayList<>();
    for (int i = 0; i < size(); i++) {
      if (fulfils.test(i)) {
        int first = i;
        while (i + 1 < size() && !ends.test(i) && fulfils.test(i + 1)) {
          i++;
        }
        runs.add(new Run(first, i));
      }
    }
    return runs;
  }

  /**
   * A time in which the log was silent.
   *
   * @param from index of the last reading before it
   * @param to index of the log's first reading after it
   */
  record Gap(int from, int to) {

    /** How many readings by hand lie in it. */
    public int byHand() {
      return to - from - 1;
    }
  }
}
