package org.flitchbook.sums;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Level;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Unit;

/**
 * Heat that a probe saw, added up: support beside a lethality table, never in its place. F = ∫
 * 10^((T − reference) / z) dt with straight lines between readings, in closed form for each of them
 * (dt × 10^((T0 − reference) / z) × (e^x − 1) / x, x = ln 10 × (T1 − T0) / z); log reduction = F ÷
 * D. The laws of Bigelow as textbooks print them; the closed form is their integral.
 *
 * @param minutes F at the reference temperature, 12 digits, rounded down
 * @param logs the tenfold reductions, 12 digits, rounded down; easily means nothing when large
 * @param cap the most that is displayed
 */
public record Lethality(BigDecimal minutes, BigDecimal logs, BigDecimal cap) {

  private static final MathContext DIGITS = new MathContext(12, RoundingMode.DOWN);

  /**
   * Adds up a curve. Nothing counts below {@link Credit#lowest} (a line that crosses it is cut
   * there), after the peak where {@link Credit#heatingOnly} says so, and over a gap. A time written
   * to the minute counts as its worst second; a reading by hand beside a live log counts only where
   * it is cooler than the log on both sides.
   *
   * @param shift {@link Shift#DOWN} for any decision, so that the probe's error counts against the
   *     lot
   * @throws ArithmeticException where a temperature has more than nine decimals
   */
  public static Lethality of(Curve curve, Shift shift, Resistance resistance, Credit credit) {
    Integral integral =
        new Integral(
            Kept.of(curve, index -> Kept.isCooler(curve, shift, index)),
            shift,
            credit.heatingOnly(),
            Level.of(credit.lowest()),
            Level.of(resistance.reference()),
            Level.ofDifference(resistance.z()));
    double minutes = integral.minutes();
    double perLog = resistance.d().in(Unit.MINUTE).value().rounded(12).doubleValue();
    return new Lethality(
        new BigDecimal(minutes, DIGITS), new BigDecimal(minutes / perLog, DIGITS), credit.cap());
  }

  public boolean isCapped() {
    return logs.compareTo(cap) >= 0;
  }

  /** {@code 6.5 log}: the cap where it is reached, else rounded down to a tenth. */
  public String shown() {
    BigDecimal shown = isCapped() ? cap.stripTrailingZeros() : logs.setScale(1, RoundingMode.DOWN);
    return shown.toPlainString() + " log";
  }

  /**
   * How an organism dies of heat: D(T) = D × 10^((reference − T) / z).
   *
   * @param reference a temperature with at most nine decimals
   * @param d the time at the reference that leaves a tenth of them, more than 0
   * @param z the difference of temperature that makes D a tenth, more than 0, as 10 °F
   */
  public record Resistance(Quantity reference, Quantity d, Quantity z) {

    public Resistance {
      boolean temperatures =
          reference.dimension() == Dimension.TEMPERATURE && z.dimension() == Dimension.TEMPERATURE;
      if (!temperatures || d.dimension() != Dimension.TIME) {
        throw new IllegalArgumentException(
            "a reference of " + reference + ", D of " + d + " and z of " + z);
      }
      if (d.value().signum() <= 0 || z.value().signum() <= 0) {
        throw new IllegalArgumentException("D of " + d + " and z of " + z + " must be more than 0");
      }
    }
  }

  /**
   * What of a curve counts towards lethality.
   *
   * @param lowest the temperature below which nothing counts; at it everything does
   * @param heatingOnly whether nothing counts after the last of the highest readings: while meat
   *     cools, the straight line between two readings lies above the true curve
   * @param cap the most logs that are ever displayed, more than 0
   */
  public record Credit(Quantity lowest, boolean heatingOnly, BigDecimal cap) {

    public Credit {
      if (lowest.dimension() != Dimension.TEMPERATURE || cap.signum() <= 0) {
        throw new IllegalArgumentException("a lowest of " + lowest + " and a cap of " + cap);
      }
    }
  }

  /** The integral; strict arithmetic, so that every machine gives the same. */
  private record Integral(
      Curve curve, Shift shift, boolean heatingOnly, long lowest, long reference, long z) {

    /** In z above the reference: a broken probe's thousands of degrees stay a number. */
    private static final int HOTTEST = 200;

    double minutes() {
      double sum = 0;
      int end = heatingOnly ? lastPeak() : curve.size() - 1;
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
     * The mean of 10^((T − reference) / z) over a straight line. Calculated from its hot end, where
     * the sum is the same up or down and x is never above 0, so that a steep line can't overflow.
     */
    private double meanRate(long low, long high) {
      double x = StrictMath.log(10) * (low - high) / z;
      double mean = -x < 1e-12 ? 1 : StrictMath.expm1(x) / x;
      double exponent = (double) (high - reference) / z;
      return StrictMath.pow(10, Math.min(HOTTEST, exponent)) * mean;
    }
  }
}
