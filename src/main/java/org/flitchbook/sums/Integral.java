package org.flitchbook.sums;

import org.flitchbook.measure.Level;

/** The integral of {@link Lethality}; strict arithmetic, so that every machine gives the same. */
final class Integral {

  /** In z above the reference: a broken probe's thousands of degrees stay a number. */
  private static final int HOTTEST = 200;

  private final Curve curve;
  private final Shift shift;
  private final Credit credit;
  private final long reference;
  private final long z;
  private final long lowest;

  Integral(Curve curve, Shift shift, Resistance resistance, Credit credit) {
    this.curve = Kept.of(curve, index -> Kept.isCooler(curve, shift, index));
    this.shift = shift;
    this.credit = credit;
    this.reference = resistance.referenceLevel();
    this.z = resistance.zLevels();
    this.lowest = Level.of(credit.lowest());
  }

  double minutes() {
    double sum = 0;
    int end = credit.heatingOnly() ? lastPeak() : curve.size() - 1;
    for (int i = 0; i < end; i++) {
      sum += curve.gapAfter(i) ? 0 : line(i);
    }
    return sum;
  }

  private int lastPeak() {
    int peak = 0;
    for (int i = 1; i < curve.size(); i++) {
      peak = curve.level(i, shift) >= curve.level(peak, shift) ? i : peak;
    }
    return peak;
  }

  private double line(int before) {
    long one = curve.level(before, shift);
    long other = curve.level(before + 1, shift);
    long low = Math.min(one, other);
    long high = Math.max(one, other);
    if (high < lowest) {
      return 0;
    }
    double counted = low >= lowest ? 1 : (double) (high - lowest) / (double) (high - low);
    long millis = Math.max(0, curve.earliest(before + 1) - curve.latest(before));
    return millis / 60_000.0 * counted * meanRate(Math.max(low, lowest), high);
  }

  /**
   * The mean of 10^((T − reference) / z) over a straight line. Reckoned from its hot end, where the
   * sum is the same up or down and x is never above 0, so that a steep line can't overflow.
   */
  private double meanRate(long low, long high) {
    double x = StrictMath.log(10) * (low - high) / z;
    double mean = -x < 1e-12 ? 1 : StrictMath.expm1(x) / x;
    double exponent = (double) (high - reference) / z;
    return StrictMath.pow(10, Math.min(HOTTEST, exponent)) * mean;
  }
}
