package org.flitchbook.sums;

import static org.flitchbook.sums.Line.MINUTE;
import static org.flitchbook.sums.Line.fahrenheit;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class ExposureTest {

  private static void check(
      Exposure exposure, double longest, double unseen, boolean begins, boolean running) {
    assertEquals(Math.round(longest * MINUTE), exposure.longest(), "longest");
    assertEquals(Math.round(unseen * MINUTE), exposure.unseen(), "unseen");
    assertEquals(begins, exposure.beginsInside(), "begins inside");
    assertEquals(running, exposure.running(), "running");
  }

  /** Above 41 °F, a reading every ten minutes; minutes. */
  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          # fact                               | readings                             | longest | unseen | begins | running
          never above                          | 0:38 10:40 20:41                     | 0  | 0  | false | false
          at the level is not above            | 0:41 10:41 20:41                     | 0  | 0  | false | false
          a tenth above is                     | 0:41 10:41.1 20:41                   | 20 | 0  | false | false
          from good reading to good reading    | 0:40 10:42 20:43 30:41 40:40         | 30 | 0  | false | false
          stays add up                         | 0:40 10:42 20:40 30:40 40:42 50:40   | 40 | 0  | false | false
          stays that share a good reading      | 0:40 10:42 20:40 30:42 40:40         | 40 | 0  | false | false
          begins above                         | 0:42 10:40 20:40                     | 10 | 0  | true  | false
          still above                          | 0:40 10:40 20:42                     | 10 | 0  | false | true
          above from first to last             | 0:42 10:42 20:42                     | 20 | 0  | true  | true
          one reading above                    | 0:42                                 | 0  | 0  | true  | true
          a gap between good readings is unseen | 0:40 10:40 50:40 60:40              | 0  | 40 | false | false
          a hand reading beside the log ends none | 0:40 10:42 h15:40 20:40            | 20 | 0  | false | false
          a bad one by hand counts             | 0:40 h5:42 10:40 20:40               | 10 | 0  | false | false
          one in a silent log ends it          | 0:40 10:42 h20:40 55:40              | 20.99998 | 35 | false | false
          a gap beside a bad one counts        | 0:40 10:42 50:40 60:40               | 50 | 0  | false | false
          """)
  void time_above_a_level_adds_up_against_the_lot(
      String fact,
      String readings,
      double longest,
      double unseen,
      boolean begins,
      boolean running) {
    Line line = Line.every(10, readings);
    check(
        Exposure.above(line, Shift.AS_WRITTEN, fahrenheit("41")), longest, unseen, begins, running);
  }

  /** Between 50 and 130 °F, a reading every ten minutes; minutes. */
  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          # fact                            | readings                              | longest | unseen | begins | running
          up and down again                 | 0:40 10:60 20:140 30:120 40:40        | 40 | 0  | false | false
          the edges are outside             | 0:50 10:50 20:130 30:130              | 10 | 0  | false | false
          through the band at one bound     | 0:40 10:140 20:140                    | 10 | 0  | false | false
          above it does not count           | 0:60 10:140 20:150 30:140 40:60       | 20 | 0  | true  | true
          a gap above is unseen             | 0:140 40:140 50:140                   | 0  | 40 | false | false
          a gap from above to below counts  | 0:140 40:40                           | 40 | 0  | false | false
          """)
  void time_in_a_band_adds_up_over_the_whole_curve(
      String fact,
      String readings,
      double longest,
      double unseen,
      boolean begins,
      boolean running) {
    Line line = Line.every(10, readings);
    check(
        Exposure.between(line, Shift.AS_WRITTEN, fahrenheit("50"), fahrenheit("130")),
        longest,
        unseen,
        begins,
        running);
  }

  @ParameterizedTest
  @CsvSource({"AS_WRITTEN, 0", "UP, 20", "DOWN, 0"})
  void the_error_of_the_probe_counts_against_the_lot(Shift shift, long minutes) {
    Line line = Line.every(10, "0:40 10:40.6 20:40").within("0.5 °F");
    assertEquals(minutes * MINUTE, Exposure.above(line, shift, fahrenheit("41")).longest());
  }

  @Test
  void a_reading_by_hand_counts_at_the_worse_end_of_its_minute() {
    Line line = Line.every(10, "h0:40 h10:42 h20:40");
    long time = Exposure.above(line, Shift.AS_WRITTEN, fahrenheit("41")).longest();
    assertEquals(21 * MINUTE - 1, time);
  }

  /** Above 41 °F; in ms, by hand to the minute. */
  @ParameterizedTest
  @CsvSource({"h0:42, 59999", "h0:40, 0", "h0:40 h10:40 h20:40, 0"})
  void one_reading_by_hand_is_its_minute_and_one_that_is_not_above_is_nothing(
      String readings, long millis) {
    Line line = Line.every(10, readings);
    assertEquals(millis, Exposure.above(line, Shift.AS_WRITTEN, fahrenheit("41")).longest());
  }

  @Test
  void no_reading_is_no_time_and_an_empty_band_is_refused() {
    Line none = new Line(List.of(), MINUTE, 0);
    check(Exposure.above(none, Shift.UP, 0), 0, 0, false, false);
    assertThrows(IllegalArgumentException.class, () -> Exposure.between(none, Shift.UP, 10, 10));
    check(Exposure.between(none, Shift.UP, 10, 11), 0, 0, false, false);
  }
}
