package org.flitchbook.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.OptionalLong;
import java.util.SplittableRandom;
import org.flitchbook.SeededRun;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

final class LevelTest {

  private static final long SEED = 9_000_000_000L;
  private static final int ROUNDS = SeededRun.cases("Levels", SEED, 20_000);

  @ParameterizedTest(name = "a reading of {0} {1} is {3} a limit of {2}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          # reading    | unit       | limit    | falls
          129.9        | FAHRENHEIT | 130 °F   | below
          130.0        | FAHRENHEIT | 130 °F   | at
          130.1        | FAHRENHEIT | 130 °F   | above
          54.4         | CELSIUS    | 130 °F   | below
          54.444444444 | CELSIUS    | 130 °F   | below
          54.444444445 | CELSIUS    | 130 °F   | above
          60.0         | CELSIUS    | 140 °F   | at
          140.0        | FAHRENHEIT | 60 °C    | at
          139.999999999 | FAHRENHEIT | 60 °C   | below
          140.000000001 | FAHRENHEIT | 60 °C   | above
          5.0          | CELSIUS    | 41 °F    | at
          89.9         | PERCENT    | 90 %     | below
          90           | PERCENT    | 90.0 %   | at
          """)
  void a_level_falls_at_a_limit_where_arithmetic_says(
      BigDecimal reading, Unit unit, String limit, String falls) {
    long level = Level.of(reading, unit).orElseThrow();
    int order = Long.compare(level, Level.of(Quantity.required(limit)));
    assertEquals(falls, order < 0 ? "below" : order > 0 ? "above" : "at");
  }

  @ParameterizedTest(name = "{0} is held: {1}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          # reading          | held  | why
          0.123456789        | true  | nine decimals
          0.1234567891       | false | ten decimals
          0.1234567890       | true  | the tenth is a 0
          99999999           | true  | eight digits
          -99999999.999999999 | true | eight digits and nine decimals
          100000000          | false | nine digits
          1E+30              | false | thirty digits
          1E+7               | true  | eight digits, written short
          """)
  void nine_decimals_and_eight_digits_are_held(BigDecimal reading, boolean held, String why) {
    for (Unit unit : new Unit[] {Unit.CELSIUS, Unit.FAHRENHEIT, Unit.PERCENT}) {
      assertEquals(held, Level.of(reading, unit).isPresent(), why + " in " + unit);
    }
  }

  /** As programs write floats. */
  @ParameterizedTest(name = "a reading of {0} {1} is {3} {2}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          # reading           | unit       | limit         | falls
          41.00000000000001   | FAHRENHEIT | 41 °F         | above
          40.99999999999999   | FAHRENHEIT | 41 °F         | below
          41.00000000000001   | FAHRENHEIT | 5 °C          | above
          40.99999999999999   | FAHRENHEIT | 5 °C          | below
          5.00000000000000001 | CELSIUS    | 41 °F         | above
          4.99999999999999999 | CELSIUS    | 41 °F         | below
          54.44444444444444   | CELSIUS    | 130 °F        | below
          54.44444444444445   | CELSIUS    | 130 °F        | above
          -0.0000000000000001 | CELSIUS    | 32 °F         | below
          1E-300              | CELSIUS    | 0 °C          | above
          90.00000000000001   | PERCENT    | 90 %          | above
          89.99999999999999   | PERCENT    | 90 %          | below
          5.300000190734863   | CELSIUS    | 5.3 °C        | above
          5.300000190734863   | CELSIUS    | 5.30000019 °C | above
          5.300000190734863   | CELSIUS    | 5.3000002 °C  | below
          5.00000000          | CELSIUS    | 41 °F         | at
          """)
  void a_float_falls_at_a_limit_where_arithmetic_says(
      BigDecimal reading, Unit unit, String limit, String falls) {
    long level = Level.near(reading, unit).orElseThrow();
    int order = Long.compare(level, Level.of(Quantity.required(limit)));
    assertEquals(falls, order < 0 ? "below" : order > 0 ? "above" : "at");
  }

  /** By exact arithmetic, for floats and limits that lie as near to each other as may be. */
  @Test
  void a_float_stays_on_its_side_of_every_limit_of_eight_decimals() {
    SplittableRandom random = new SplittableRandom(SEED);
    for (int round = 0; round < ROUNDS; round++) {
      Unit ofLimit = random.nextBoolean() ? Unit.CELSIUS : Unit.FAHRENHEIT;
      Unit unit = random.nextBoolean() ? Unit.CELSIUS : Unit.FAHRENHEIT;
      Quantity limit =
          new Quantity(
              Ratio.of(random.nextLong(-20_000_000_000L, 50_000_000_000L), 100_000_000), ofLimit);
      Ratio same = Level.quantity(Level.of(limit), unit).value();
      BigDecimal reading =
          same.rounded(11 + random.nextInt(8))
              .add(BigDecimal.valueOf(random.nextInt(-3, 4), 11 + random.nextInt(8)));
      int truth = Ratio.of(reading).compareTo(same);
      long level = Level.near(reading, unit).orElseThrow();
      assertEquals(
          truth, Long.compare(level, Level.of(limit)), reading + " " + unit + ", " + limit);
    }
  }

  @Test
  void nine_digits_before_the_decimals_are_too_many_for_a_float_too() {
    assertTrue(Level.near(new BigDecimal("99999999.12345678901"), Unit.CELSIUS).isPresent());
    assertFalse(Level.near(new BigDecimal("100000000.12345678901"), Unit.CELSIUS).isPresent());
    assertFalse(Level.near(new BigDecimal("1E+999"), Unit.CELSIUS).isPresent());
  }

  @Test
  void a_limit_that_can_not_be_held_is_refused_and_not_rounded() {
    Quantity fine = Quantity.required("54.4444444444 °C");
    assertEquals(
        "54.444444 °C has more than nine decimals",
        assertThrows(ArithmeticException.class, () -> Level.of(fine)).getMessage());
    assertThrows(ArithmeticException.class, () -> Level.of(Quantity.required("99999999999 °C")));
  }

  @ParameterizedTest
  @EnumSource
  void only_degrees_and_per_cent_are_held(Unit unit) {
    boolean expected = unit == Unit.CELSIUS || unit == Unit.FAHRENHEIT || unit == Unit.PERCENT;
    assertEquals(expected, Level.holds(unit));
    if (!expected) {
      assertThrows(IllegalArgumentException.class, () -> Level.of(BigDecimal.ONE, unit));
    }
  }

  @Test
  void a_difference_has_no_freezing_point() {
    long half = Level.ofDifference(Quantity.required("0.5 °F"));
    long limit = Level.of(Quantity.required("130 °F"));
    long below = Level.of(new BigDecimal("129.5"), Unit.FAHRENHEIT).orElseThrow();
    assertEquals(limit, below + half);
    assertEquals("0.5 °F", Level.difference(half, Unit.FAHRENHEIT).toString());
    assertEquals(
        Level.ofDifference(Quantity.required("9 °F")),
        Level.ofDifference(Quantity.required("5 °C")));
    assertFalse(Level.of(Quantity.required("9 °F")) == Level.of(Quantity.required("5 °C")));
  }

  @Test
  void a_level_there_and_back_is_the_reading() {
    SplittableRandom random = new SplittableRandom(SEED);
    for (int i = 0; i < ROUNDS; i++) {
      BigDecimal reading =
          BigDecimal.valueOf(
              random.nextLong(-10_000_000_000L, 10_000_000_000L), random.nextInt(10));
      for (Unit unit : new Unit[] {Unit.CELSIUS, Unit.FAHRENHEIT, Unit.PERCENT}) {
        String message = "seed " + SEED + ", round " + i + ": " + reading + " " + unit;
        OptionalLong level = Level.of(reading, unit);
        if (level.isEmpty()) {
          assertTrue(reading.precision() - reading.scale() > 8, message);
          continue;
        }
        Quantity back = Level.quantity(level.getAsLong(), unit);
        assertEquals(Quantity.of(reading, unit), back, message);
        assertEquals(level.getAsLong(), Level.of(back), message);
      }
    }
  }

  @Test
  void levels_keep_the_order_of_the_quantities() {
    SplittableRandom random = new SplittableRandom(SEED);
    for (int i = 0; i < ROUNDS; i++) {
      Quantity a = near(random, Unit.CELSIUS);
      Quantity b = near(random, Unit.FAHRENHEIT);
      assertEquals(
          a.compareTo(b),
          Long.compare(Level.of(a), Level.of(b)),
          "seed " + SEED + ", round " + i + ": " + a + " and " + b);
    }
  }

  /** Around 60 °C, which is 140 °F, in steps of a tenth. */
  private static Quantity near(SplittableRandom random, Unit unit) {
    long tenths = (unit == Unit.CELSIUS ? 600 : 1400) + random.nextLong(-9, 10);
    return Quantity.of(BigDecimal.valueOf(tenths, 1), unit);
  }

  @Test
  void a_drawn_level_is_the_reading() {
    assertEquals(130.5, Level.drawn(Level.of(Quantity.required("130.5 °F")), Unit.FAHRENHEIT));
    assertEquals(140.0, Level.drawn(Level.of(Quantity.required("60 °C")), Unit.FAHRENHEIT));
  }
}
