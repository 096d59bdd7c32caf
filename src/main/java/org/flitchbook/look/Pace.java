package org.flitchbook.look;

import java.util.Map;
import java.util.TreeMap;

/** The steps from each time of a log to the next. */
final class Pace {

  private static final int MANY = 100_000;

  private final TreeMap<Long, Integer> forward = new TreeMap<>();
  private final TreeMap<Long, Integer> backward = new TreeMap<>();
  private long steps;
  private long back;
  private long still;
  private int backLine;
  private long backBy;
  private int longLine;
  private long longest;
  private long last;
  private boolean begun;
  private long lowest = Long.MAX_VALUE;
  private long highest = Long.MIN_VALUE;

  /**
   * Takes the next time.
   *
   * @param at in seconds, or in whatever the log counts
   */
  void take(long at, int line) {
    if (begun) {
      step(at - last, line);
    }
    begun = true;
    last = at;
    lowest = Math.min(lowest, at);
    highest = Math.max(highest, at);
  }

  private void step(long step, int line) {
    steps++;
    count(step > 0 ? forward : backward, Math.abs(step));
    if (step > 0) {
      longLine = step > longest ? line : longLine;
      longest = Math.max(longest, step);
    } else if (step < 0) {
      backLine = back == 0 ? line : backLine;
      backBy = back == 0 ? -step : backBy;
      back++;
    } else {
      still++;
    }
  }

  private static void count(Map<Long, Integer> counts, long step) {
    if (step != 0 && counts.size() < MANY) {
      counts.merge(step, 1, Integer::sum);
    }
  }

  /** The median of the steps in the direction of most; 0 where there are none. */
  long usual() {
    return median(isNewestFirst() ? backward : forward);
  }

  /** The counts come in the order of their keys. */
  private static long median(Map<Long, Integer> counts) {
    long half = counts.values().stream().mapToLong(count -> count).sum() / 2;
    for (Map.Entry<Long, Integer> each : counts.entrySet()) {
      half -= each.getValue();
      if (half < 0) {
        return each.getKey();
      }
    }
    return 0;
  }

  boolean isNewestFirst() {
    return steps > 1 && back > steps / 2;
  }

  long back() {
    return back;
  }

  int backLine() {
    return backLine;
  }

  long backBy() {
    return backBy;
  }

  /** Whether most rows have the time of the one before. */
  boolean isMostlyStill() {
    return 2 * still > steps;
  }

  long longest() {
    return longest;
  }

  int longLine() {
    return longLine;
  }

  long span() {
    return begun ? highest - lowest : 0;
  }
}
