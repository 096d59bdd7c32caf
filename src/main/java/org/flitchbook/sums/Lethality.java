package org.flitchbook.sums;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
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
   * to the minute counts at its worse end; a reading by hand beside a live log counts only where it
   * is cooler than the log on both sides.
   *
   * @param shift {@link Shift#DOWN} for any decision, so that the probe's error counts against the
   *     lot
   * @throws ArithmeticException where a temperature has more than nine decimals
   */
  public static Lethality of(Curve curve, Shift shift, Resistance resistance, Credit credit) {
    double minutes = new Integral(curve, shift, resistance, credit).minutes();
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
}
