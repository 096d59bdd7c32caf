package org.flitchbook.look;

import java.util.Map;
import java.util.TreeMap;

/** The steps from each time of a log to the next, in seconds or in whatever the log counts. */
final class TimeSteps {

  private static final int MANY = 100_000;

  /** A log goes on at its pace while no step is longer than so many usual ones. */
  private static final int LONG = 3;

  /** No step of so many seconds is called a hole. */
  private static final long SHORT = 300;

  /** How often the time went back, on which line first, and by how much there. */
  int back;

  int backLine;
  long backBy;

  /** The longest step forward, and the line on which it ends. */
  long longest;

  int longLine;

  private long longestBack;

  /** Whether every time is a whole minute. */
  boolean wholeMinutes = true;

  private final TreeMap<Long, Integer> forward = new TreeMap<>();
  private final TreeMap<Long, Integer> backward = new TreeMap<>();
  private int times;
  private int still;
  private boolean beginning;
  private long last;
  private long lowest = Long.MAX_VALUE;
  private long highest = Long.MIN_VALUE;

  /** Another part begins, which may be of an earlier time. */
  void begin() {
    beginning = true;
  }

  void take(long at, int line) {
    if (times > 0 && !(beginning && at < last)) {
      step(at - last, line);
    }
    beginning = false;
    times++;
    last = at;
    lowest = Math.min(lowest, at);
    highest = Math.max(highest, at);
    wholeMinutes &= at % 60 == 0;
  }

  private void step(long step, int line) {
    Map<Long, Integer> counts = step > 0 ? forward : backward;
    if (step == 0) {
      still++;
    } else if (counts.size() < MANY) {
      counts.merge(Math.abs(step), 1, Integer::sum);
    }
    if (step > longest) {
      longest = step;
      longLine = line;
    }
    if (step < 0) {
      backLine = back == 0 ? line : backLine;
      backBy = back == 0 ? -step : backBy;
      longestBack = Math.max(longestBack, -step);
      back++;
    }
  }

  /** The median of the steps in the direction of most; 0 where there are none. */
  long usual() {
    Map<Long, Integer> counts = isNewestFirst() ? backward : forward;
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
    return times > 2 && back > (times - 1) / 2;
  }

  /** Whether the rows follow each other in one direction, without a hole. */
  boolean keepsPace() {
    long against = isNewestFirst() ? longest : longestBack;
    long along = isNewestFirst() ? longestBack : longest;
    return times > 2 && against == 0 && along <= LONG * usual();
  }

  /** Whether a step is a hole in the log. */
  boolean isHole(long step) {
    return step > Math.max(LONG * usual(), SHORT);
  }

  /** Whether most rows have the time of the one before. */
  boolean isMostlyStill() {
    return times > 1 && 2 * still > times - 1;
  }

  long span() {
    return times == 0 ? 0 : highest - lowest;
  }
}
