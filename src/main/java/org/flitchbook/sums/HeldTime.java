package org.flitchbook.sums;

import java.util.Comparator;
import java.util.function.BinaryOperator;

/**
 * The longest unbroken run of readings at or above a temperature, from its first to its last
 * reading; of runs as long, the one with more readings, then one with a hand check. A gap breaks
 * it, since nobody saw the product there.
 *
 * @param longest in ms, the shortest that the readings allow
 * @param readings how many readings the run has, the same written twice being one; 0 where the
 *     temperature was never reached
 * @param byHand whether a hand check is among them
 */
public record HeldTime(long longest, int readings, boolean byHand, int start, int end) {

  private static final HeldTime NEVER = new HeldTime(0, 0, false, 0, 0);

  private static final BinaryOperator<HeldTime> LONGER =
      BinaryOperator.maxBy(
          Comparator.comparing(HeldTime::longest)
              .thenComparing(HeldTime::readings)
              .thenComparing(HeldTime::byHand));

  /**
   * Finds the longest run within the heat. Readings by hand beside a log that goes on confirm a run
   * of the log or break it, but make it no longer.
   *
   * @param from only readings at or after this time count, and {@code until} at or before that
   */
  public static HeldTime of(Curve curve, Shift shift, long level, long from, long until) {
    HeldTime best = NEVER;
    Run run = Run.NONE;
    for (int i = 0; i < curve.size(); i++) {
      boolean inHeat = curve.earliest(i) >= from && curve.earliest(i) <= until;
      if (inHeat && curve.level(i, shift) >= level) {
        run = run.and(curve, i);
        best = LONGER.apply(best, run.held(curve));
      }
      if (!inHeat || curve.level(i, shift) < level || curve.gapAfter(i)) {
        run = Run.NONE;
      }
    }
    return best;
  }

  /**
   * A run so far.
   *
   * @param first the first reading that stands by itself; -1 before there is one
   * @param last the last of these
   */
  private record Run(int first, int last, int readings, boolean byHand) {

    static final Run NONE = new Run(-1, -1, 0, false);

    Run and(Curve curve, int index) {
      boolean stands = curve.stands(index);
      return new Run(
          stands && first < 0 ? index : first,
          stands ? index : last,
          curve.isWrittenTwice(index) ? readings : readings + 1,
          byHand || curve.byHand(index));
    }

    HeldTime held(Curve curve) {
      if (first < 0) {
        return NEVER;
      }
      long held = Math.max(0, curve.earliest(last) - curve.latest(first));
      return new HeldTime(held, readings, byHand, first, last);
    }
  }
}
