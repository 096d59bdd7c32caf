package org.flitchbook.measure;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;

/**
 * An exact fraction, so that a comparison at a limit falls where arithmetic says and never where
 * rounding does. Always in lowest terms, the denominator above 0.
 */
public record Ratio(BigInteger numerator, BigInteger denominator) implements Comparable<Ratio> {

  public static final Ratio ZERO = of(0);
  public static final Ratio ONE = of(1);

  public Ratio {
    if (denominator.signum() == 0) {
      throw new ArithmeticException(numerator + " divided by 0");
    }
    BigInteger common = numerator.gcd(denominator);
    if (denominator.signum() < 0) {
      common = common.negate();
    }
    numerator = numerator.divide(common);
    denominator = denominator.divide(common);
  }

  public static Ratio of(long whole) {
    return new Ratio(BigInteger.valueOf(whole), BigInteger.ONE);
  }

  public static Ratio of(long numerator, long denominator) {
    return new Ratio(BigInteger.valueOf(numerator), BigInteger.valueOf(denominator));
  }

  public static Ratio of(BigDecimal decimal) {
    return decimal.scale() > 0
        ? new Ratio(decimal.unscaledValue(), BigInteger.TEN.pow(decimal.scale()))
        : new Ratio(decimal.toBigIntegerExact(), BigInteger.ONE);
  }

  /**
   * The fraction that a decimal is.
   *
   * @param decimal digits with a decimal point, such as {@code 6.25}
   */
  public static Ratio of(String decimal) {
    return of(new BigDecimal(decimal));
  }

  public Ratio plus(Ratio other) {
    return new Ratio(
        numerator.multiply(other.denominator).add(other.numerator.multiply(denominator)),
        denominator.multiply(other.denominator));
  }

  public Ratio minus(Ratio other) {
    return plus(other.negate());
  }

  public Ratio times(Ratio other) {
    return new Ratio(numerator.multiply(other.numerator), denominator.multiply(other.denominator));
  }

  /**
   * This divided by the other.
   *
   * @throws ArithmeticException if the other is 0
   */
  public Ratio over(Ratio other) {
    return new Ratio(numerator.multiply(other.denominator), denominator.multiply(other.numerator));
  }

  public Ratio negate() {
    return new Ratio(numerator.negate(), denominator);
  }

  public Ratio abs() {
    return signum() < 0 ? negate() : this;
  }

  public int signum() {
    return numerator.signum();
  }

  public boolean isAbove(Ratio other) {
    return compareTo(other) > 0;
  }

  public boolean isBelow(Ratio other) {
    return compareTo(other) < 0;
  }

  /** The nearest decimal with that many places, for print only; halves go away from 0. */
  public BigDecimal rounded(int places) {
    return new BigDecimal(numerator)
        .divide(new BigDecimal(denominator), places, RoundingMode.HALF_UP);
  }

  /** The largest whole number not above this. */
  public BigInteger floor() {
    BigInteger[] parts = numerator.divideAndRemainder(denominator);
    return parts[1].signum() < 0 ? parts[0].subtract(BigInteger.ONE) : parts[0];
  }

  @Override
  public int compareTo(Ratio other) {
    return numerator.multiply(other.denominator).compareTo(other.numerator.multiply(denominator));
  }

  /** At most six decimals, without trailing zeros: {@code 149.366168}. */
  @Override
  public String toString() {
    BigDecimal shown = rounded(6).stripTrailingZeros();
    return shown.scale() < 0 ? shown.setScale(0).toPlainString() : shown.toPlainString();
  }
}
