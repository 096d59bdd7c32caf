package org.flitchbook.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class RatioTest {

  private static final long SEED = 417;

  @Test
  void a_fraction_stands_in_lowest_terms_with_its_sign_on_top() {
    assertEquals(Ratio.of(-2, 3), Ratio.of(4, -6));
    assertEquals(BigInteger.valueOf(3), Ratio.of(4, -6).denominator());
    assertEquals(Ratio.ZERO, Ratio.of(0, -7));
  }

  /** Above, at and below: 2/3 against 0.6, two thirds and 0.7. */
  @ParameterizedTest
  @CsvSource({"3, 5, true, false", "4, 6, false, false", "7, 10, false, true"})
  void a_fraction_equal_to_another_is_neither_above_nor_below(
      long numerator, long denominator, boolean above, boolean below) {
    Ratio twoThirds = Ratio.of(2, 3);
    assertEquals(above, twoThirds.isAbove(Ratio.of(numerator, denominator)));
    assertEquals(below, twoThirds.isBelow(Ratio.of(numerator, denominator)));
  }

  @Test
  void what_is_left_of_its_sign_is_its_distance_from_0() {
    assertEquals(Ratio.of(2, 3), Ratio.of(-2, 3).abs());
    assertEquals(Ratio.of(2, 3), Ratio.of(2, 3).abs());
    assertEquals(Ratio.ZERO, Ratio.ZERO.abs());
  }

  @Test
  void nothing_is_divided_by_0() {
    assertEquals(
        "5 divided by 0",
        assertThrows(ArithmeticException.class, () -> Ratio.of(5, 0)).getMessage());
    assertThrows(ArithmeticException.class, () -> Ratio.ONE.over(Ratio.ZERO));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          # top | bottom | 1 decimal | floor | printed
          1     | 3      | 0.3       | 0     | 0.333333
          2     | 3      | 0.7       | 0     | 0.666667
          5     | 100    | 0.1       | 0     | 0.05
          -5    | 100    | -0.1      | -1    | -0.05
          -4    | 2      | -2.0      | -2    | -2
          -7    | 2      | -3.5      | -4    | -3.5
          7     | 2      | 3.5       | 3     | 3.5
          1000  | 1      | 1000.0    | 1000  | 1000
          """)
  void rounding_is_for_print_alone(
      long top, long bottom, BigDecimal oneDecimal, BigInteger floor, String printed) {
    Ratio ratio = Ratio.of(top, bottom);
    assertEquals(oneDecimal, ratio.rounded(1));
    assertEquals(floor, ratio.floor());
    assertEquals(printed, ratio.toString());
  }

  @Test
  void a_decimal_of_any_scale_is_taken_whole() {
    assertEquals(Ratio.of(25, 4), Ratio.of("6.25"));
    assertEquals(Ratio.of(1200), Ratio.of(new BigDecimal("12E2")));
  }

  @Test
  void the_laws_of_arithmetic_hold_without_rounding() {
    SplittableRandom random = new SplittableRandom(SEED);
    for (int i = 0; i < 5_000; i++) {
      Ratio a = any(random);
      Ratio b = any(random);
      Ratio c = any(random);
      String message = "seed " + SEED + ", round " + i + ": " + a + ", " + b + ", " + c;
      assertEquals(a, a.plus(b).minus(b), message);
      assertEquals(a.times(b.plus(c)), a.times(b).plus(a.times(c)), message);
      assertEquals(a.compareTo(b), a.plus(c).compareTo(b.plus(c)), message);
      assertEquals(a.isAbove(b), b.isBelow(a), message);
      assertEquals(
          a.signum() == 0 ? Ratio.ZERO : a, b.signum() == 0 ? a : a.over(b).times(b), message);
      assertEquals(a.abs(), a.negate().abs(), message);
    }
  }

  private static Ratio any(SplittableRandom random) {
    return Ratio.of(random.nextLong(-1_000, 1_000), random.nextLong(1, 1_000));
  }
}
