package org.flitchbook.sums;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import org.flitchbook.measure.Level;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.measure.Unit;
import org.flitchbook.sums.Lethality.Credit;
import org.flitchbook.sums.Lethality.Resistance;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Every row of every published table of time at temperature: held exactly as long as it asks, a
 * second shorter, a second longer, and as long a billionth of a degree too cool.
 */
final class PublishedRowsTest {

  private static final long SECOND = 1000;
  private static final BigDecimal HAIR = new BigDecimal("0.000000001");

  /**
   * A hold of so many ms with a reading at most a minute apart, and a cooler reading before and
   * behind it.
   */
  private static Line hold(long level, long millis) {
    List<Line.Point> points = new ArrayList<>();
    points.add(new Line.Point(-SECOND, level - 1, false));
    long steps = Math.max(1, (millis + 59_999) / 60_000);
    for (long i = 0; i <= steps; i++) {
      points.add(new Line.Point(millis * i / steps, level, false));
    }
    points.add(new Line.Point(millis + SECOND, level - 1, false));
    return new Line(points, Line.MINUTE, 0);
  }

  private static long held(Line line, long level) {
    return HeldTime.of(line, Shift.AS_WRITTEN, level, Long.MIN_VALUE, Long.MAX_VALUE).longest();
  }

  private static void check(String degrees, String time, String source) {
    long row = Level.of(Quantity.required(degrees + " °F"));
    long asked = millis(time);
    assertEquals(asked, held(hold(row, asked), row), source + ", exactly as long");
    assertEquals(asked + SECOND, held(hold(row, asked + SECOND), row), source + ", longer");
    if (asked > 0) {
      assertTrue(held(hold(row, asked - SECOND), row) < asked, source + ", a second too short");
    }
    String cooler = new BigDecimal(degrees).subtract(HAIR) + " °F";
    Line cool = hold(Level.of(Quantity.required(cooler)), asked + SECOND);
    HeldTime never = HeldTime.of(cool, Shift.AS_WRITTEN, row, Long.MIN_VALUE, Long.MAX_VALUE);
    assertEquals(0, never.readings(), source + ", a hair too cool");
  }

  private static long millis(String time) {
    Ratio seconds = Quantity.required(time).inBase();
    return seconds.times(Ratio.of(SECOND)).floor().longValueExact();
  }

  /** 31 rows of three tables, all read in the guideline itself. */
  @ParameterizedTest(name = "{0} °F: {2}, {3}, {4}")
  @CsvFileSource(
      resources = "/org/flitchbook/plan/a21-tables.csv",
      delimiter = '|',
      numLinesToSkip = 1)
  void a_row_of_the_cooking_guideline_is_met_at_its_time_and_not_below(
      String degrees, String celsius, String log65, String log7, String log5) {
    check(degrees, log65, "FSIS-GD-2021-14 table 2, p. 35, 6.5 log (read)");
    check(degrees, log7, "FSIS-GD-2021-14 table 2, p. 35, 7 log (read)");
    check(degrees, log5, "FSIS-GD-2021-14 table 6, p. 59, 5 log (read)");
  }

  /** FDA Food Code 2022, 3-401.11(B), whole roasts, cured pork roasts among them (read). */
  @ParameterizedTest(name = "{0} °F: {1}")
  @CsvSource({
    "130, 112 min", "131, 89 min", "133, 56 min", "135, 36 min", "136, 28 min", "138, 18 min",
    "140, 12 min", "142, 8 min", "144, 5 min", "145, 4 min", "147, 134 s", "149, 85 s",
    "151, 54 s", "153, 34 s", "155, 22 s", "157, 14 s", "158, 0 s"
  })
  void a_row_of_the_roast_table_is_met_at_its_time_and_not_below(String degrees, String time) {
    check(degrees, time, "FDA Food Code 2022, 3-401.11(B) (read)");
  }

  /** Former 9 CFR 318.10(c)(1), two quotations alike (second-hand). */
  @ParameterizedTest(name = "{0} °F: {1}")
  @CsvSource({
    "120, 21 h",
    "122, 9.5 h",
    "124, 4.5 h",
    "126, 2 h",
    "128, 1 h",
    "130, 30 min",
    "132, 15 min",
    "134, 6 min",
    "136, 3 min",
    "138, 2 min",
    "140, 1 min",
    "142, 1 min",
    "144, 0 s"
  })
  void a_row_of_the_trichina_table_is_met_at_its_time_and_not_below(String degrees, String time) {
    check(degrees, time, "former 9 CFR 318.10(c)(1) (second-hand)");
  }

  /** The law's D is made so that no row is ever credited with more than its target. */
  @ParameterizedTest(name = "{0} °F: {2}, {3}")
  @CsvFileSource(
      resources = "/org/flitchbook/plan/a21-tables.csv",
      delimiter = '|',
      numLinesToSkip = 1)
  void the_envelope_is_never_kinder_than_a_row(
      String degrees, String celsius, String log65, String log7, String log5) {
    assertTrue(logs(degrees, log65, "19.51 min") <= 6.5, "19.51 min at 130 °F, 6.5 log (computed)");
    assertTrue(logs(degrees, log7, "18.20 min") <= 7, "18.20 min at 130 °F, 7 log (computed)");
  }

  /** The envelope is no wider than it must be: some row comes within a hundredth of a log. */
  @ParameterizedTest
  @CsvSource({"142, 8 min, 19.51 min, 6.5", "136, 32 min, 18.20 min, 7"})
  void the_envelope_touches_a_row(String degrees, String time, String d, double target) {
    assertEquals(target, logs(degrees, time, d), 0.01, "kinetics of the table (computed)");
  }

  /** t = 112 or 121 min × 10^(−(T − 130) / 10), in min up to 145 °F and s above (computed). */
  @ParameterizedTest(name = "{0} °F: {1} and {2}")
  @CsvSource({
    "130, 112.00 min, 121 min", "135, 35.42 min, 38.26 min", "140, 11.20 min, 12.10 min",
    "145, 3.54 min, 3.83 min", "146, 168.80 s, 182.36 s", "150, 67.20 s, 72.60 s",
    "154, 26.75 s, 28.90 s", "157, 13.41 s, 14.49 s", "158, 10.65 s, 11.51 s"
  })
  void the_law_behind_the_table_gives_its_logs(String degrees, String log65, String log7) {
    double last = degrees.equals("145") ? 0.01 : 0.005;
    assertEquals(6.5, logs(degrees, log65, "17.230769 min"), last);
    assertEquals(7, logs(degrees, log7, "17.285714 min"), last);
  }

  private static double logs(String degrees, String time, String d) {
    Quantity at = Quantity.required(degrees + " °F");
    Line line = hold(Level.of(at), millis(time));
    Resistance resistance =
        new Resistance(
            Quantity.required("130 °F"), Quantity.required(d), Quantity.required("10 °F"));
    Credit credit = new Credit(at, false, BigDecimal.TEN);
    return Lethality.of(line, Shift.AS_WRITTEN, resistance, credit).logs().doubleValue();
  }

  /** What one °F is in °C, to three decimals (computed elsewhere). */
  @ParameterizedTest(name = "{0} °F is {1} °C")
  @CsvSource({
    "40, 4.444",
    "41, 5.000",
    "70, 21.111",
    "80, 26.667",
    "126, 52.222",
    "130, 54.444",
    "140, 60.000",
    "145, 62.778",
    "158, 70.000",
    "160, 71.111",
    "165, 73.889"
  })
  void degrees_turn_into_degrees(String fahrenheit, String celsius) {
    Quantity written = Quantity.required(fahrenheit + " °F");
    assertEquals(celsius, written.in(Unit.CELSIUS).value().rounded(3).toPlainString());
    assertEquals(
        celsius,
        Level.quantity(Level.of(written), Unit.CELSIUS).value().rounded(3).toPlainString());
  }
}
