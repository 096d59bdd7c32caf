package org.flitchbook.sums;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import org.flitchbook.measure.Quantity;
import org.flitchbook.sums.Lethality.Credit;
import org.flitchbook.sums.Lethality.Resistance;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The integral against sums that others printed, or that can be done with a pencil. */
final class LethalityTest {

  private static final String SMOKEHOUSE =
      "0:4 60:30 120:48 180:56 210:59 240:61 255:61.5 285:58 345:45";

  private static Quantity q(String text) {
    return Quantity.required(text);
  }

  private static Lethality of(
      Curve curve, String reference, String z, String lowest, boolean heatingOnly) {
    return Lethality.of(
        curve,
        Shift.AS_WRITTEN,
        new Resistance(q(reference), q("1 min"), q(z)),
        new Credit(q(lowest), heatingOnly, new BigDecimal("7")));
  }

  /** The readings lie at most an hour apart, which a log of one each hour does not call a gap. */
  @ParameterizedTest(name = "{0}: {6} min")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          # vector              | readings                | reference | z | lowest | leg | F | source
          A ramp                | 0:60 10:70              | 70 °C  | 10 °C  | 0 °C     | both    | 3.908650  | 9 / ln 10, by pencil
          A, the other way      | 0:70 10:60              | 70 °C  | 10 °C  | 0 °C     | both    | 3.908650  | the same ramp falling
          A, falling            | 0:70 10:60              | 70 °C  | 10 °C  | 0 °C     | heating | 0.000000  | the peak comes first
          B up, hold, down      | F 0:130 10:140 15:140 25:130 | 140 °F | 10 °F | 32 °F | both   | 12.817301 | 5 + 2 × 9 / ln 10, by pencil
          B without cooling     | F 0:130 10:140 15:140 25:130 | 140 °F | 10 °F | 32 °F | heating | 8.908650 | 5 + 9 / ln 10, by pencil
          C a smokehouse        | C                       | 60 °C  | 5.5556 °C  | 0 °C     | both    | 105.1360  | worked out elsewhere (computed)
          C from 54.4 °C        | C                       | 60 °C  | 5.5556 °C  | 54.4 °C  | both    | 102.3579  | worked out elsewhere (computed)
          C heating leg         | C                       | 60 °C  | 5.5556 °C  | 54.4 °C  | heating | 69.1084   | worked out elsewhere (computed)
          C at 70 °C            | C                       | 70 °C  | 7.5 °C | 0 °C     | both    | 5.1462    | worked out elsewhere (computed)
          C at 70 °C from 54.4  | C                       | 70 °C  | 7.5 °C | 54.4 °C  | both    | 4.8408    | worked out elsewhere (computed)
          """)
  void a_curve_adds_up_to_what_others_found(
      String vector,
      String readings,
      String reference,
      String z,
      String lowest,
      String leg,
      String f,
      String source) {
    Line line =
        readings.startsWith("F")
            ? Line.every(60, readings.substring(1))
            : Line.celsius(60, readings.equals("C") ? SMOKEHOUSE : readings);
    BigDecimal minutes = of(line, reference, z, lowest, leg.equals("heating")).minutes();
    BigDecimal expected = new BigDecimal(f);
    double half = Math.pow(10, -expected.scale()) * 0.51;
    assertEquals(expected.doubleValue(), minutes.doubleValue(), half, source);
  }

  /** How long at a temperature is worth 10 min at 90 °C: z = 9 °C below, 10 °C above. */
  @ParameterizedTest(name = "{0} °C: {1} min")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          # D: equivalence table for non-proteolytic Cl. botulinum, chilled food association by way of
          # the agency of the United Kingdom (read)
          80  | 129.0
          81  | 100
          82  | 77
          83  | 60
          84  | 46
          85  | 36
          86  | 28
          87  | 22
          88  | 17
          89  | 13
          90  | 10.0
          91  | 7.9
          92  | 6.3
          93  | 5.0
          94  | 4.0
          95  | 3.2
          96  | 2.5
          97  | 2.0
          98  | 1.6
          99  | 1.3
          100 | 1.0
          """)
  void a_row_of_the_published_equivalence_table_is_ten_minutes_at_90(int degrees, String minutes) {
    String z = degrees < 90 ? "9 °C" : "10 °C";
    Line hold = Line.hold(degrees + " °C", new BigDecimal(minutes));
    double f = of(hold, "90 °C", z, "0 °C", false).minutes().doubleValue();
    // The table prints rounded minutes; the largest gap is 3.2 %, at 99 °C.
    assertEquals(10, f, 0.33);
    double printed = new BigDecimal(minutes).doubleValue();
    double lastPlace = minutes.equals("129.0") ? 1 : Math.pow(10, -new BigDecimal(minutes).scale());
    assertEquals(printed, 10 / f * printed, lastPlace * 0.51);
  }

  /** E: a lecture's table (read): 12 decimal reductions take 2.4 min at 121.1 °C, z = 10 °C. */
  @ParameterizedTest(name = "{0} for {1}")
  @CsvSource({
    "101.1 °C, 240",
    "111.1 °C, 24",
    "121.1 °C, 2.4",
    "131.1 °C, 0.25",
    "141.1 °C, 0.025"
  })
  void twelve_reductions_take_a_tenth_of_the_time_ten_degrees_hotter(String at, String minutes) {
    Lethality held =
        Lethality.of(
            Line.hold(at, new BigDecimal(minutes)),
            Shift.AS_WRITTEN,
            new Resistance(q("121.1 °C"), q("12 s"), q("10 °C")),
            new Credit(q("100 °C"), false, new BigDecimal("20")));
    // 15 s and 1.5 s are printed rounded: 14.4 and 1.44 s.
    assertEquals(12, held.logs().doubleValue(), 0.51);
    if (minutes.startsWith("2")) {
      assertEquals(12, held.logs().doubleValue(), minutes.contains("5") ? 0.51 : 1e-9);
    }
  }

  /**
   * F: a canning manual of the FAO (read) adds up readings five minutes apart, with a rate of 0 at
   * both ends, to 2.925 and so to 14.6 min; up to half of the reading at 60 min, 1.730 and 8.6 min.
   * Its column of temperatures was not seen. A sum by trapezoids is not the closed form; what can
   * be held is that its rate of 0.776 is 120.0 °C, and what five minutes at each are worth.
   */
  @ParameterizedTest(name = "a rate of {0} for {1} min")
  @CsvSource({"2.925, 5, 14.625, 14.6", "1.730, 5, 8.650, 8.6", "0.776, 5, 3.880, 3.9"})
  void summed_rates_times_five_minutes_are_the_printed_minutes(
      double rates, double minutes, double f, double printed) {
    assertEquals(f, rates * minutes, 1e-9);
    assertEquals(printed, f, 0.051);
    String degrees =
        BigDecimal.valueOf(121.1 + 10 * Math.log10(rates))
                .setScale(6, java.math.RoundingMode.HALF_EVEN)
            + " °C";
    Line hold = Line.hold(degrees, BigDecimal.valueOf(minutes));
    assertEquals(f, of(hold, "121.1 °C", "10 °C", "0 °C", false).minutes().doubleValue(), 1e-5);
    if (rates == 0.776) {
      assertTrue(degrees.startsWith("119.99"), degrees + ", printed as 120.0");
    }
  }

  /** G: pasteurisation units, PU = t × 1.393^(T − 60) (read), which is z = 6.947 °C. */
  @ParameterizedTest
  @ValueSource(ints = {56, 58, 60, 62, 64, 66, 70})
  void pasteurisation_units_are_the_same_sum(int degrees) {
    Line hold = Line.hold(degrees + " °C", BigDecimal.TEN);
    double f = of(hold, "60 °C", "6.947 °C", "0 °C", false).minutes().doubleValue();
    double units = 10 * Math.pow(1.393, degrees - 60);
    assertEquals(units, f, units * 0.0005);
  }

  /**
   * H: 4600 survivors after 10 min and 160 after 15 min at 115.5 °C (an exercise, read): D = 3.428
   * min. With D = 30 s at 121 °C and z = 10.5 °C, D at 150 °C is 0.0519 s.
   */
  @Test
  void survivors_give_the_d_of_the_exercise() {
    Lethality five =
        Lethality.of(
            Line.hold("115.5 °C", BigDecimal.valueOf(5)),
            Shift.AS_WRITTEN,
            new Resistance(q("115.5 °C"), q("3.428 min"), q("10 °C")),
            new Credit(q("0 °C"), false, BigDecimal.TEN));
    assertEquals(Math.log10(4600.0 / 160), five.logs().doubleValue(), 5e-4);
    Lethality second =
        Lethality.of(
            Line.hold("150 °C", BigDecimal.ONE),
            Shift.AS_WRITTEN,
            new Resistance(q("121 °C"), q("30 s"), q("10.5 °C")),
            new Credit(q("0 °C"), false, BigDecimal.TEN));
    assertEquals(0.0519, 60 / second.logs().doubleValue(), 5e-5);
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          # fact                                        | readings            | F
          at the lowest everything counts               | 0:130 10:130        | 10
          a tenth below nothing does                    | 0:129.9 10:129.9    | 0
          a line that ends at the lowest is cut away    | 0:120 10:130        | 0
          half of a line that crosses it counts         | 0:120 10:140        | 19.543
          as much of one that falls                     | 0:140 10:120        | 19.543
          a gap of more than five minutes counts as none | g 0:130 6:130 7:130 | 1
          a gap of five minutes counts                  | g 0:130 5:130 6:130 | 6
          one reading is no time                        | 0:150               | 0
          """)
  void what_nobody_saw_or_what_is_too_cool_counts_for_nothing(
      String fact, String readings, String f) {
    Line line =
        readings.startsWith("g") ? Line.of(readings.substring(1)) : Line.every(10, readings);
    assertEquals(
        new BigDecimal(f).doubleValue(),
        of(line, "130 °F", "10 °F", "130 °F", false).minutes().doubleValue(),
        5e-4);
  }

  @Test
  void a_curve_without_readings_is_worth_nothing() {
    Line none = new Line(java.util.List.of(), Line.MINUTE, 0);
    assertEquals(0, of(none, "130 °F", "10 °F", "130 °F", true).minutes().signum());
  }

  /**
   * z = 10 °F: half a degree Celsius, 0.9 °F, is a factor of 10^0.09 = 1.23 (computed elsewhere).
   */
  @Test
  void the_error_of_the_probe_is_taken_away() {
    Line line = Line.every(10, "0:140 10:140").within("0.9 °F");
    Resistance resistance = new Resistance(q("140 °F"), q("1 min"), q("10 °F"));
    Credit credit = new Credit(q("130 °F"), false, BigDecimal.TEN);
    double down = Lethality.of(line, Shift.DOWN, resistance, credit).minutes().doubleValue();
    assertEquals(10 / 1.23, down, 0.005);
    double up = Lethality.of(line, Shift.UP, resistance, credit).minutes().doubleValue();
    assertEquals(10 * 1.23, up, 0.005);
  }

  @Test
  void hand_readings_count_from_the_end_of_the_minute_to_its_beginning() {
    Line line = Line.every(10, "h0:140 h10:140");
    double f = of(line, "140 °F", "10 °F", "130 °F", false).minutes().doubleValue();
    assertEquals(9 + 1 / 60_000.0, f, 1e-9);
  }

  @ParameterizedTest(name = "{0} min: {1}")
  @CsvSource({"6.59, 6.5 log", "6.5, 6.5 log", "6.99, 6.9 log", "7, 7 log", "77, 7 log"})
  void the_figure_is_capped_and_rounded_down_for_display(String minutes, String shown) {
    Lethality held =
        of(Line.hold("140 °F", new BigDecimal(minutes)), "140 °F", "10 °F", "130 °F", true);
    assertEquals(shown, held.shown());
    assertEquals(shown.equals("7 log"), held.isCapped());
    assertEquals(new BigDecimal("7"), held.cap());
  }

  /** A hand check may be of another place: beside a live log it is never worth a minute. */
  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          # fact                                | readings                          | F
          hotter than the log                   | 0:140 10:140 h12:160 20:140       | 20
          two of them                           | 0:140 10:140 h12:160 h14:165 20:140 | 20
          between the log's readings            | 0:130 h5:139 10:140               | 3.90865
          cooler than the log                   | 0:140 10:140 h15:120 20:140       | 11.75889
          hotter than the log, before the peak  | 0:130 h5:150 10:140               | 3.90865
          where the log was silent it stands    | 0:140 h20:140 40:140              | 39.000
          """)
  void a_reading_by_hand_beside_a_live_log_only_takes_away(String fact, String readings, double f) {
    Line line = Line.every(10, readings);
    assertEquals(f, of(line, "140 °F", "10 °F", "130 °F", true).minutes().doubleValue(), 0.01);
  }

  @Test
  void a_broken_probe_gives_a_number_all_the_same() {
    Line line = Line.every(10, "0:32 10:9999999 20:32 30:9999999 40:9999999");
    Lethality held = of(line, "130 °F", "1 °F", "130 °F", false);
    assertTrue(held.isCapped());
    assertFalse(held.logs().signum() < 0);
  }

  @ParameterizedTest
  @CsvSource({
    "130 min, 1 min, 10 °F",
    "130 °F, 1 °F, 10 °F",
    "130 °F, 1 min, 10 min",
    "130 °F, 0 min, 10 °F",
    "130 °F, 1 min, 0 °F",
    "130 °F, -1 min, 10 °F"
  })
  void a_law_that_is_none_is_refused(String reference, String d, String z) {
    assertThrows(IllegalArgumentException.class, () -> new Resistance(q(reference), q(d), q(z)));
  }

  @ParameterizedTest
  @CsvSource({"130 min, 7", "130 °F, 0", "130 °F, -1"})
  void a_credit_that_is_none_is_refused(String lowest, String cap) {
    assertThrows(
        IllegalArgumentException.class, () -> new Credit(q(lowest), true, new BigDecimal(cap)));
  }
}
