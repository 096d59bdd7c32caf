package org.flitchbook.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.SplittableRandom;
import org.flitchbook.SeededRun;
import org.flitchbook.message.Language;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

final class QuantityTest {

  private static final long SEED = 20260224;
  private static final int ROUNDS = SeededRun.cases("Quantities", SEED, 20_000);

  @ParameterizedTest(name = "{0} is {2} {1}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          # a value     | a limit   | falls
          129.9 °F      | 130.0 °F  | below
          130.0 °F      | 130.0 °F  | at
          130.1 °F      | 130.0 °F  | above
          54.4 °C       | 130 °F    | below
          54.444444444 °C | 130 °F  | below
          54.444444445 °C | 130 °F  | above
          54.5 °C       | 130 °F    | above
          60.0 °C       | 140 °F    | at
          59.9 °C       | 140 °F    | below
          60.1 °C       | 140 °F    | above
          5 °C          | 41 °F     | at
          5.0 °C        | 41.0 °F   | at
          5.1 °C        | 41 °F     | above
          -40 °C        | -40 °F    | at
          199.89 ppm    | 200 ppm   | below
          200.00 ppm    | 200 ppm   | at
          200.02 ppm    | 200 ppm   | above
          200.000000000001 ppm | 200 ppm | above
          0.02 %        | 200 ppm   | at
          200 mg/kg     | 200 ppm   | at
          90 min        | 1.5 h     | at
          91 min        | 1.5 h     | above
          7 d           | 168 h     | at
          16 oz         | 1 lb      | at
          453.59237 g   | 1 lb      | at
          453.592 g     | 1 lb      | below
          25.4 mm       | 1 in      | at
          0.3048 m      | 1 ft      | at
          """)
  void a_value_falls_at_a_limit_where_arithmetic_says(String value, String limit, String falls) {
    int order = Quantity.required(value).compareTo(Quantity.required(limit));
    assertEquals(falls, order < 0 ? "below" : order > 0 ? "above" : "at");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          # written     | value  | unit
          130 °F        | 130    | FAHRENHEIT
          130°F         | 130    | FAHRENHEIT
          130 F         | 130    | FAHRENHEIT
          130 ℉         | 130    | FAHRENHEIT
          -1.5 °C       | -1.5   | CELSIUS
          +1.5 C        | 1.5    | CELSIUS
          1.5 h         | 1.5    | HOUR
          16 hours      | 16     | HOUR
          7 d           | 7      | DAY
          10 %          | 10     | PERCENT
          11.50 g       | 11.5   | GRAM
          5 lbs         | 5      | POUND
          0.96          | 0.96   | BARE
          """)
  void what_sheets_and_plans_write_is_read(String written, BigDecimal value, Unit unit) {
    assertEquals(Optional.of(Quantity.of(value, unit)), Quantity.parse(written));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        " ",
        "g",
        "200ppb",
        "200 PPM",
        "1,5 h",
        "1.500,0 g",
        "1'000 g",
        ".5 h",
        "5. h",
        "1e3 g",
        "0x10 g",
        "NaN g",
        "Infinity g",
        "--1 °C",
        "1 2 g",
        "2 tsp",
        "130 degrees",
        "130 K",
        "5 M",
        "5 Kg",
        "1234567890123 g",
        "1.1234567890123 g",
        "٣ g",
        "1.5 h\n2 h",
        "12 g 3"
      })
  void anything_else_is_refused(String written) {
    assertEquals(Optional.empty(), Quantity.parse(written));
  }

  @Test
  void a_constant_that_is_no_quantity_is_refused() {
    assertEquals(
        "\"two pinches\" is no quantity",
        assertThrows(IllegalArgumentException.class, () -> Quantity.required("two pinches"))
            .getMessage());
  }

  @Test
  void quantities_of_two_dimensions_are_not_compared() {
    Quantity grams = Quantity.required("1 g");
    Quantity degrees = Quantity.required("1 °C");
    assertEquals(
        "1 g can't be compared in °C",
        assertThrows(IllegalArgumentException.class, () -> grams.compareTo(degrees)).getMessage());
    assertThrows(IllegalArgumentException.class, () -> grams.in(Unit.CELSIUS));
    assertThrows(IllegalArgumentException.class, () -> grams.differenceIn(Unit.CELSIUS));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          # value   | unit       | as a level   | as a difference
          212 °F    | CELSIUS    | 100 °C       | 117.777778 °C
          32 °F     | CELSIUS    | 0 °C         | 17.777778 °C
          9 °F      | CELSIUS    | -12.777778 °C | 5 °C
          5 °C      | FAHRENHEIT | 41 °F        | 9 °F
          0 °C      | FAHRENHEIT | 32 °F        | 0 °F
          1.5 h     | MINUTE     | 90 min       | 90 min
          1 lb      | OUNCE      | 16 oz        | 16 oz
          """)
  void a_level_is_not_a_difference(String value, Unit unit, String level, String difference) {
    Quantity quantity = Quantity.required(value);
    assertEquals(level, quantity.in(unit).toString());
    assertEquals(difference, quantity.differenceIn(unit).toString());
  }

  @Test
  void a_difference_stands_in_the_unit_of_the_first() {
    assertEquals("5 °F", Quantity.required("46 °F").minus(Quantity.required("5 °C")).toString());
    assertEquals(
        "460 g", Quantity.required("1000 g").minus(Quantity.required("0.54 kg")).toString());
  }

  @Test
  void print_has_at_most_six_decimals_and_no_trailing_zeros() {
    assertEquals("149.366168 ppm", Quantity.required("149.36616750 ppm").toString());
    assertEquals("1000 g", Quantity.required("1000.00 g").toString());
    assertEquals("0.96", Quantity.required("0.960").toString());
  }

  /** To what can be read at a glance, and 0 and 1000 as they are. */
  @ParameterizedTest(name = "{0} shows as {1}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          149.366168 ppm | 149.366 ppm
          12.34567 %     | 12.346 %
          0.98765        | 0.988
          1.23456 h      | 1.23 h
          7.215 d        | 7.22 d
          90.04 min      | 90 min
          90.05 min      | 90.1 min
          130.00 °F      | 130 °F
          1000 g         | 1000 g
          1000000 g      | 1000000 g
          0 ppm          | 0 ppm
          0.04 g         | 0 g
          -0.5 °C        | -0.5 °C
          """)
  void what_is_shown_can_be_read_at_a_glance(String written, String shown) {
    assertEquals(shown, Quantity.required(written).shown());
    assertEquals(
        shown.split(" ", 2)[0], Quantity.required(written).shownNumber(), "without its unit");
  }

  @Test
  void a_conversion_there_and_back_changes_nothing() {
    SplittableRandom random = new SplittableRandom(SEED);
    Unit[] units = Unit.values();
    for (int i = 0; i < ROUNDS; i++) {
      Quantity quantity = any(random, units[random.nextInt(units.length)]);
      for (Unit other : Unit.of(quantity.dimension())) {
        String message = "seed " + SEED + ", round " + i + ": " + quantity + " by " + other;
        assertEquals(quantity, quantity.in(other).in(quantity.unit()), message);
        assertEquals(0, quantity.compareTo(quantity.in(other)), message);
        assertEquals(quantity, quantity.differenceIn(other).differenceIn(quantity.unit()), message);
      }
    }
  }

  @Test
  void the_order_is_one_order_in_whatever_units() {
    SplittableRandom random = new SplittableRandom(SEED);
    for (int i = 0; i < ROUNDS; i++) {
      Quantity a = any(random, Unit.CELSIUS);
      Quantity b = any(random, Unit.CELSIUS);
      int order = a.compareTo(b);
      String message = "seed " + SEED + ", round " + i + ": " + a + " and " + b;
      assertEquals(order, a.in(Unit.FAHRENHEIT).compareTo(b), message);
      assertEquals(order, a.compareTo(b.in(Unit.FAHRENHEIT)), message);
      assertEquals(-order, b.compareTo(a), message);
      assertEquals(order, a.minus(b).value().signum(), message);
      assertEquals(order > 0, a.isAbove(b), message);
      assertEquals(order < 0, a.isBelow(b), message);
    }
  }

  /** Half of them close together, so that equal ones come up too. */
  private static Quantity any(SplittableRandom random, Unit unit) {
    long unscaled = random.nextBoolean() ? random.nextInt(-9, 9) : random.nextLong(1_000_000_000L);
    return Quantity.of(BigDecimal.valueOf(unscaled, random.nextInt(10)), unit);
  }

  /** What a plan or a rule may state: of its dimension, no less than nothing, and exact. */
  @ParameterizedTest(name = "{0} as {1}: {2}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          # written           | dimension   | read
          5 g                 | MASS        | true
          5                   | MASS        | false
          5 °F                | MASS        | false
          0 g                 | MASS        | true
          -1 g                | MASS        | false
          0.0000000001 g      | MASS        | true
          -40 °C              | TEMPERATURE | true
          41 °F               | TEMPERATURE | true
          0.123456789 °F      | TEMPERATURE | true
          0.1234567891 °F     | TEMPERATURE | false
          99999999.9 °C       | TEMPERATURE | true
          100000000 °C        | TEMPERATURE | false
          -100000000 °C       | TEMPERATURE | false
          0.123456789 %       | SHARE       | true
          0.1234567891 %      | SHARE       | false
          0.1234567891 ppm    | SHARE       | true
          -1 %                | SHARE       | false
          100000 d            | TIME        | true
          100001 d            | TIME        | false
          2400000 h           | TIME        | true
          2400001 h           | TIME        | false
          100001 mm           | LENGTH      | true
          0.5                 | NUMBER      | true
          -0.5                | NUMBER      | false
          five                | NUMBER      | false
          """)
  void a_quantity_of_a_dimension_is_read_where_it_can_be_held(
      String written, Dimension dimension, boolean read) {
    assertEquals(
        read ? Optional.of(Quantity.required(written)) : Optional.empty(),
        Quantity.parse(written, dimension));
  }

  @ParameterizedTest
  @CsvSource({
    "200.02 ppm, 200.02, 200.02 ppm",
    "1234.5678 ppm, 1234.568, 1234.5678 ppm",
    "1000 g, 1000, 1000 g"
  })
  void it_is_printed_rounded_and_quoted_as_its_source_writes_it(
      String written, String number, String quoted) {
    Quantity quantity = Quantity.required(written);
    assertEquals(number, quantity.shownNumber());
    assertEquals(quantity.shown(), quantity.in(Language.ENGLISH));
    assertEquals(quoted, quantity.asWritten().in(Language.ENGLISH));
  }
}
