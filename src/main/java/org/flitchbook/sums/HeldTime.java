package org.flitchbook.sums;

/**
 * The longest unbroken run of readings at or above a temperature, from its first to its last
 * reading; of runs as long, the one with more readings, then one with a hand check. A gap longer
 * than 3 intervals and 5 minutes breaks it, since nobody saw the product there.
 *
 * @param longest in ms, the shortest that the readings allow
 * @param readings how many readings the run has; 0 where the temperature was never reached
 * @param byHand whether a hand check is among them
 */
public record HeldTime(long longest, int readings, boolean byHand, int start, int end) {

  static final HeldTime NEVER = new HeldTime(0, 0, false, 0, 0);

  /**
   * Finds the longest run within the heat.
   *
   * @param from only readings at or after this time count, and {@code until} at or before that
   */
  public static HeldTime of(Curve curve, Shift shift, long level, long from, long until) {
    HeldTime best = NEVER;
    int start = -1;
    boolean byHand = false;
    for (int i = 0; i < curve.size(); i++) {
      boolean inHeat = curve.earliest(i) >= from && curve.earliest(i) <= until;
      if (inHeat && curve.level(i, shift) >= level) {
        byHand = start < 0 ? curve.byHand(i) : byHand || curve.byHand(i);
        start = start < 0 ? i : start;
        best = best.orLonger(run(curve, start, i, byHand));
      }
      if (!inHeat || curve.level(i, shift) < level || curve.gapAfter(i)) {
        start = -1;
      }
    }
    return best;
  }

  private static HeldTime run(Curve curve, int start, int end, boolean byHand) {
    long held = Math.max(0, curve.earliest(end) - curve.latest(start));
    return new HeldTime(held, end - start + 1, byHand, start, end);
  }

  private HeldTime orLonger(HeldTime other) {
    if (readings == 0 || other.longest != longest) {
      return readings == 0 || other.longest > longest ? other : this;
    }
    boolean hand = other.readings == readings && other.byHand && !byHand;
    return other.readings > readings || hand ? other : this;
  }
}
