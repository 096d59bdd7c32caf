package org.flitchbook.sums;

import java.util.stream.IntStream;

/**
 * How long a probe was inside a band in all, over the whole curve and however often it went in,
 * counted against the lot: each stay from the last reading outside to the next reading outside. A
 * reading at an edge is outside. A reading by hand beside a live log ends no stay. Two readings on
 * opposite sides of the band have it between them.
 *
 * @param longest in ms, all stays added up; between readings that lie outside on the same side
 *     without a gap, nothing is added
 * @param unseen in ms, gaps between two readings outside on the same side, where the probe may have
 *     been inside for the whole time
 * @param beginsInside whether the first reading is inside already, so that more may have been
 * @param running whether the last reading is inside, so that more may come
 */
public record Exposure(long longest, long unseen, boolean beginsInside, boolean running) {

  /**
   * The time above a level, such as the hours above 41 °F.
   *
   * @param shift {@link Shift#UP} counts against the lot
   */
  public static Exposure above(Curve curve, Shift shift, long level) {
    return between(curve, shift, level, Long.MAX_VALUE);
  }

  /**
   * The time between two levels, such as 50 and 130 °F; of {@link Shift#UP} and {@link Shift#DOWN}
   * the longer counts against the lot.
   *
   * @throws IllegalArgumentException where the bottom is not below the top
   */
  public static Exposure between(Curve curve, Shift shift, long bottom, long top) {
    if (bottom >= top) {
      throw new IllegalArgumentException("a band from " + bottom + " to " + top);
    }
    Walk all = new Walk(curve, shift, bottom, top);
    return new Walk(Kept.of(curve, index -> all.side(index) == 0), shift, bottom, top).exposure();
  }

  private record Walk(Curve curve, Shift shift, long bottom, long top) {

    Exposure exposure() {
      int last = curve.size() - 1;
      return last < 0
          ? new Exposure(0, 0, false, false)
          : new Exposure(longest(), unseen(), side(0) == 0, side(last) == 0);
    }

    private long longest() {
      int last = curve.size() - 1;
      return curve.runs(this::inside, i -> false).stream()
          .mapToLong(
              run -> curve.latest(Math.min(run.last() + 1, last)) - curve.earliest(run.first()))
          .sum();
    }

    private long unseen() {
      return IntStream.range(0, curve.size())
          .filter(i -> !inside(i) && curve.gapAfter(i))
          .mapToLong(i -> curve.latest(i + 1) - curve.earliest(i))
          .sum();
    }

    /** Whether the time from this reading to the next counts. */
    private boolean inside(int index) {
      int here = side(index);
      return here == 0 || (index + 1 < curve.size() && here != side(index + 1));
    }

    /** Below the band, in it, above it. */
    private int side(int index) {
      long level = curve.level(index, shift);
      if (level <= bottom) {
        return -1;
      }
      return level >= top ? 1 : 0;
    }
  }
}
