package org.flitchbook.sums;

import java.util.Optional;

/**
 * How long a probe was inside a temperature band, counted against the lot: from the last reading
 * still outside to the first reading outside again on the other side.
 *
 * @param state how far the probe got
 * @param longest the longest time in ms that the readings allow
 * @param shortest the shortest time in ms that the readings allow
 * @param interpolated in ms, with straight lines between readings; empty where not both crossings
 *     were seen
 * @param start index of the reading at which the clock starts
 * @param end index of the reading at which it stops, or of the last one where it still runs
 * @param gap whether a crossing, or a reading's gap beside it, lies in a gap of the log
 */
public record BandTime(
    State state,
    long longest,
    long shortest,
    Optional<Long> interpolated,
    int start,
    int end,
    boolean gap) {

  /** How far a probe got through a band. */
  public enum State {
    /** Both crossings were seen. */
    DONE,
    /** The clock runs at the last reading. */
    RUNNING,
    /** The band was not entered yet. */
    BEFORE,
    /** The first reading already lies inside, so that nobody saw the beginning. */
    BEGINS_INSIDE
  }

  /**
   * The same clock with time that was spent elsewhere and counts as if it were spent here.
   *
   * @param most in ms, the most that it may have been
   * @param least in ms, the least
   */
  public BandTime plus(long most, long least) {
    Optional<Long> lines = interpolated.map(time -> time + least);
    return new BandTime(state, longest + most, shortest + least, lines, start, end, gap);
  }

  private static final BandTime NOT_ENTERED = none(State.BEFORE);
  private static final BandTime NOT_SEEN = none(State.BEGINS_INSIDE);

  private static BandTime none(State state) {
    return new BandTime(state, 0, 0, Optional.empty(), 0, 0, false);
  }

  /**
   * Falling from {@code top} to {@code bottom}: the fall begins when the probe first drops below
   * the top after its own peak; the clock starts at the last reading at or above the top before
   * that (at the peak where the top was never reached, or at the reading before a gap that ends
   * with the peak, since the top may have been passed in there) and stops at the first reading at
   * or below the bottom that is not exceeded again.
   */
  public static BandTime falling(Curve curve, Shift shift, long top, long bottom) {
    int peak = curve.farthest(shift, true, i -> true).orElse(-1);
    if (peak < 0 || curve.level(peak, shift) <= bottom) {
      return NOT_ENTERED;
    }
    boolean reached = curve.level(peak, shift) >= top;
    if (!reached && peak == 0) {
      return NOT_SEEN;
    }
    int fall = peak + 1;
    while (reached && fall < curve.size() && curve.level(fall, shift) >= top) {
      fall++;
    }
    if (fall >= curve.size()) {
      return NOT_ENTERED;
    }
    int start = fall - 1;
    int end = curve.size();
    while (end > fall && curve.level(end - 1, shift) <= bottom) {
      end--;
    }
    boolean hidden = !reached && curve.gapAfter(start - 1);
    return clocked(
        curve,
        shift,
        new Band(hidden ? start - 1 : start, start, reached ? start : -1, end, top, bottom));
  }

  /**
   * Rising from {@code bottom} to {@code top}: from the last reading at or below the bottom to the
   * first at or above the top. Where the top is never reached, each time above the bottom counts
   * until the probe is at or below it again, and the longest of them is the answer; the clock runs
   * while the last one does.
   */
  public static BandTime rising(Curve curve, Shift shift, long bottom, long top) {
    int end = 0;
    while (end < curve.size() && curve.level(end, shift) < top) {
      end++;
    }
    if (end == curve.size()) {
      return neverReached(curve, shift, bottom);
    }
    int start = end - 1;
    while (start >= 0 && curve.level(start, shift) > bottom) {
      start--;
    }
    return start < 0
        ? NOT_SEEN
        : clocked(curve, shift, new Band(start, start, start, end, bottom, top));
  }

  private static BandTime neverReached(Curve curve, Shift shift, long bottom) {
    BandTime worst = NOT_ENTERED;
    long worstTime = -1;
    for (Curve.Run run : curve.runs(i -> curve.level(i, shift) > bottom, i -> false)) {
      int before = run.first() - 1;
      int end = run.last() + 1;
      Band band = new Band(before, before, before, end, bottom, bottom);
      BandTime time = before < 0 ? NOT_SEEN : clocked(curve, shift, band);
      long seen =
          curve.latest(Math.min(end, curve.size() - 1)) - curve.earliest(Math.max(before, 0));
      worst = seen >= worstTime ? time : worst.stillRunning(time);
      worstTime = Math.max(worstTime, seen);
    }
    return worst;
  }

  /** This longer time, running where the later one runs, since that one may yet outgrow it. */
  private BandTime stillRunning(BandTime later) {
    return state == State.DONE && later.state() == State.RUNNING
        ? new BandTime(State.RUNNING, longest, shortest, Optional.empty(), start, later.end(), gap)
        : this;
  }

  /**
   * @param start the reading at which the clock starts
   * @param seen the same, or the peak where the clock starts before a gap that ends with it
   * @param crossing the reading before the first crossing; -1 where none was seen
   * @param end the first reading behind the band; the curve's size where there is none
   */
  private record Band(int start, int seen, int crossing, int end, long enter, long leave) {}

  private static BandTime clocked(Curve curve, Shift shift, Band band) {
    int last = Math.min(band.end(), curve.size() - 1);
    boolean done = band.end() < curve.size();
    long longest = curve.latest(last) - curve.earliest(band.start());
    int firstInside = Math.min(band.start() + 1, last);
    int lastInside = done ? last - 1 : last;
    long shortest =
        Math.max(
            0,
            curve.earliest(Math.max(lastInside, 0))
                - curve.latest(band.crossing() < 0 ? band.seen() : firstInside));
    boolean gap = curve.gapAfter(band.start()) || (done && curve.gapAfter(last - 1));
    Optional<Long> lines = done ? Optional.of(interpolated(curve, shift, band)) : Optional.empty();
    State state = done ? State.DONE : State.RUNNING;
    return new BandTime(state, longest, shortest, lines, band.start(), last, gap);
  }

  private static long interpolated(Curve curve, Shift shift, Band band) {
    long from =
        band.crossing() < 0
            ? curve.earliest(band.seen())
            : crossing(curve, shift, band.crossing(), band.enter());
    return crossing(curve, shift, band.end() - 1, band.leave()) - from;
  }

  /** Where the straight line from a reading to the next passes a level. */
  private static long crossing(Curve curve, Shift shift, int before, long level) {
    long first = curve.level(before, shift);
    long next = curve.level(before + 1, shift);
    long from = curve.earliest(before);
    long span = curve.earliest(before + 1) - from;
    double part = (double) (first - level) / (double) (first - next);
    return from + Math.round(Math.min(1, Math.max(0, part)) * span);
  }
}
