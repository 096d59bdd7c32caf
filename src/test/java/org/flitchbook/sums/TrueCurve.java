package org.flitchbook.sums;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/**
 * A temperature known at every moment: holds joined by ramps that bend as heating and cooling do.
 * Times in ms from 0, levels as in {@link org.flitchbook.measure.Level}; between two corners the
 * curve only rises, only falls, or stays.
 */
record TrueCurve(List<Corner> corners) {

  /**
   * @param bend 0 for a straight line to the next corner, above 0 for one that flattens out
   */
  record Corner(long at, long level, double bend) {}

  /** Holds of at least so long, each warmer or cooler than the one before as it comes. */
  static TrueCurve wandering(SplittableRandom random, long hold) {
    List<Long> levels = new ArrayList<>();
    levels.add(degrees(random, 34, 48));
    int holds = random.nextInt(2, 7);
    for (int i = 0; i < holds; i++) {
      levels.add(degrees(random, 36, 165));
    }
    levels.add(degrees(random, 34, 45));
    return joined(random, levels, hold);
  }

  /** Warmed once and cooled once. */
  static TrueCurve single(SplittableRandom random, long hold) {
    return joined(
        random,
        List.of(degrees(random, 34, 48), degrees(random, 90, 165), degrees(random, 34, 45)),
        hold);
  }

  private static long degrees(SplittableRandom random, int from, int to) {
    return Line.fahrenheit(Integer.toString(random.nextInt(from, to)));
  }

  private static TrueCurve joined(SplittableRandom random, List<Long> levels, long hold) {
    List<Corner> corners = new ArrayList<>();
    long at = 0;
    for (long level : levels) {
      corners.add(new Corner(at, level, 0));
      at += hold + random.nextLong(60 * Line.MINUTE);
      corners.add(new Corner(at, level, random.nextInt(2) * random.nextDouble(0.5, 4)));
      at += 1 + random.nextLong(240 * Line.MINUTE);
    }
    return new TrueCurve(corners);
  }

  long end() {
    return corners.get(corners.size() - 1).at();
  }

  long at(long time) {
    for (int i = 0; i + 1 < corners.size(); i++) {
      if (time <= corners.get(i + 1).at()) {
        return between(corners.get(i), corners.get(i + 1), time);
      }
    }
    return corners.get(corners.size() - 1).level();
  }

  private static long between(Corner from, Corner to, long time) {
    double part = (double) (time - from.at()) / (to.at() - from.at());
    double bent =
        from.bend() == 0 ? part : Math.expm1(-from.bend() * part) / Math.expm1(-from.bend());
    return from.level() + Math.round(bent * (to.level() - from.level()));
  }

  /** The time strictly between two levels in all, to a millisecond for each crossing. */
  long within(long bottom, long top) {
    long sum = 0;
    for (int i = 0; i + 1 < corners.size(); i++) {
      sum += within(corners.get(i), corners.get(i + 1), bottom, top);
    }
    return sum;
  }

  private static long within(Corner from, Corner to, long bottom, long top) {
    if (from.level() == to.level()) {
      return from.level() > bottom && from.level() < top ? to.at() - from.at() : 0;
    }
    boolean rises = from.level() < to.level();
    long entered = first(from, to, rises ? bottom : top, rises);
    long left = first(from, to, rises ? top : bottom, rises);
    return Math.max(0, left - entered - 1);
  }

  /** The first ms at which a ramp is at or beyond a level; its end where it never is. */
  private static long first(Corner from, Corner to, long level, boolean rises) {
    long low = from.at();
    long high = to.at();
    while (low < high) {
      long middle = low + (high - low) / 2;
      long here = between(from, to, middle);
      boolean beyond = rises ? here >= level : here <= level;
      if (beyond) {
        high = middle;
      } else {
        low = middle + 1;
      }
    }
    return high;
  }

  /** From the first time below the top after the peak to the last time above the bottom. */
  long fall(long top, long bottom) {
    int peak = 0;
    for (int i = 1; i < corners.size(); i++) {
      peak = corners.get(i).level() > corners.get(peak).level() ? i : peak;
    }
    int begins = peak;
    while (corners.get(begins + 1).level() >= top) {
      begins++;
    }
    int ends = corners.size() - 1;
    while (corners.get(ends - 1).level() <= bottom) {
      ends--;
    }
    long from = first(corners.get(begins), corners.get(begins + 1), top, false);
    long to = first(corners.get(ends - 1), corners.get(ends), bottom, false);
    return to - from - 1;
  }

  /** From the last time at or below the bottom to the first at or above the top. */
  long rise(long bottom, long top) {
    int ends = 0;
    while (corners.get(ends).level() < top) {
      ends++;
    }
    int begins = ends - 1;
    while (corners.get(begins).level() > bottom) {
      begins--;
    }
    long from = first(corners.get(begins), corners.get(begins + 1), bottom, true);
    long to = first(corners.get(ends - 1), corners.get(ends), top, true);
    return to - from - 1;
  }

  boolean reaches(long level) {
    return corners.stream().anyMatch(corner -> corner.level() >= level);
  }
}
