package org.flitchbook.sums;

import static org.flitchbook.sums.Line.MINUTE;
import static org.flitchbook.sums.Line.fahrenheit;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class HeldTimeTest {

  private static final long SEED = 145;

  private static HeldTime held(Curve curve, Shift shift, String degrees) {
    return HeldTime.of(curve, shift, fahrenheit(degrees), Long.MIN_VALUE, Long.MAX_VALUE);
  }

  /** At or above 145 °F, a reading a minute; minutes. */
  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          # fact                              | readings                              | min | readings | by hand
          at the temperature counts           | 0:144 1:145 2:145 3:145 4:145 5:145 6:144 | 4 | 5 | false
          a tenth below does not              | 0:144.9 1:145 2:146 3:144.9           | 1   | 2 | false
          never reached                       | 0:140 1:144.9                         | 0   | 0 | false
          reached once                        | 0:144 1:146 2:144                     | 0   | 1 | false
          a dip breaks it                     | 0:145 1:145 2:144.9 3:145 4:145 5:145 | 2   | 3 | false
          two runs do not add up              | 0:145 1:145 2:144 3:145 4:145         | 1   | 2 | false
          a gap of five minutes is bridged    | 0:145 5:145                           | 5   | 2 | false
          a longer gap breaks it              | 0:145 1:145 7:145 8:145 9:145         | 2   | 3 | false
          a gap to a lone reading             | 0:145 7:145                           | 0   | 1 | false
          a hand reading bridges a gap        | 0:145 h5:145 10:145                   | 10  | 3 | true
          a hand reading that is low breaks   | 0:145 1:145 h2:144 3:145 4:145 5:145  | 2   | 3 | false
          by hand, and the log says no        | 0:144 h1:146 2:144                    | 0   | 0 | false
          by hand, to the edge of a gap       | 0:144 h3:146 5:144                    | 0   | 0 | false
          once, by hand in a gap              | 0:144 h3:146 6:144                    | 0   | 1 | true
          once, confirmed by hand             | 0:146 h1:146 2:144                    | 0   | 2 | true
          by hand makes the run no longer     | 0:144 h1:145 2:145 3:145 h4:145 5:144 | 1   | 4 | true
          by hand counts before by log        | 0:146 1:144 h4:146 8:144              | 0   | 1 | true
          two readings count before by hand   | 0:146 0:146 1:144 h4:146 8:144        | 0   | 2 | false
          by hand outside of the longest run  | h0:145 1:144 2:145 3:145              | 1   | 2 | false
          """)
  void the_longest_unbroken_run_counts(
      String fact, String readings, int minutes, int count, boolean byHand) {
    HeldTime held = held(Line.of(readings), Shift.AS_WRITTEN, "145");
    assertEquals(minutes * MINUTE, held.longest());
    assertEquals(count, held.readings());
    assertEquals(byHand, held.byHand());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          # into | out | min | why
          0      | 9   | 9   | all in heat
          2      | 6   | 4   | the ends count
          3      | 3   | 0   | one reading
          10     | 20  | 0   | none
          """)
  void only_time_in_heat_counts(int into, int out, int minutes, String why) {
    Line line = Line.of("0:145 1:145 2:145 3:145 4:145 5:145 6:145 7:145 8:145 9:145");
    HeldTime held =
        HeldTime.of(line, Shift.AS_WRITTEN, fahrenheit("145"), into * MINUTE, out * MINUTE);
    assertEquals(minutes * MINUTE, held.longest(), why);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          # shift    | min
          AS_WRITTEN | 2
          UP         | 4
          DOWN       | 0
          """)
  void the_uncertainty_is_taken_off(Shift shift, int minutes) {
    Line line = Line.of("0:144.4 1:144.5 2:145 3:145.5 4:145.4 5:144.5 6:144.4").within("0.5 °F");
    assertEquals(minutes * MINUTE, held(line, shift, "145").longest());
  }

  @Test
  void hand_readings_count_from_the_end_of_the_first_minute() {
    HeldTime held = held(Line.every(0, "h0:145 h4:145"), Shift.AS_WRITTEN, "145");
    assertEquals(3 * MINUTE + 1, held.longest());
    assertEquals(0, held(Line.every(0, "h0:145 h0:145"), Shift.AS_WRITTEN, "145").longest());
  }

  @Test
  void start_and_end_point_at_the_evidence() {
    HeldTime held = held(Line.of("0:144 1:145 2:146 3:144"), Shift.AS_WRITTEN, "145");
    assertEquals(1, held.start());
    assertEquals(2, held.end());
  }

  @Test
  void of_two_runs_alike_the_first_is_told() {
    HeldTime held = held(Line.of("0:145 1:145 2:144 3:145 4:145"), Shift.AS_WRITTEN, "145");
    assertEquals(0, held.start());
    assertEquals(1, held.end());
  }

  @Test
  void a_hotter_row_is_never_held_longer() {
    SplittableRandom random = new SplittableRandom(SEED);
    for (int i = 0; i < 2_000; i++) {
      Line line = any(random);
      String message = "seed " + SEED + ", round " + i + ": " + line;
      long cooler = held(line, Shift.AS_WRITTEN, "140").longest();
      assertTrue(held(line, Shift.AS_WRITTEN, "141").longest() <= cooler, message);
      assertTrue(held(line, Shift.DOWN, "140").longest() <= cooler, message);
      assertTrue(held(line, Shift.UP, "140").longest() >= cooler, message);
      HeldTime held = held(line, Shift.AS_WRITTEN, "140");
      assertEquals(held, held(line.later(i * 997L), Shift.AS_WRITTEN, "140"), message);
    }
  }

  /** Beside the program's own loop: try each pair of readings. */
  @Test
  void no_pair_of_readings_shows_a_longer_run() {
    SplittableRandom random = new SplittableRandom(SEED);
    long level = fahrenheit("140");
    for (int i = 0; i < 1_000; i++) {
      Line line = any(random);
      long longest = 0;
      for (int a = 0; a < line.size(); a++) {
        for (int b = a; b < line.size() && unbroken(line, a, b, level); b++) {
          if (line.stands(a) && line.stands(b)) {
            longest = Math.max(longest, line.earliest(b) - line.latest(a));
          }
        }
      }
      assertEquals(
          longest,
          held(line, Shift.AS_WRITTEN, "140").longest(),
          "seed " + SEED + ", round " + i + ": " + line);
    }
  }

  private static boolean unbroken(Line line, int from, int to, long level) {
    for (int i = from; i <= to; i++) {
      if (line.level(i, Shift.AS_WRITTEN) < level || (i < to && line.gapAfter(i))) {
        return false;
      }
    }
    return true;
  }

  private static Line any(SplittableRandom random) {
    List<Line.Point> points = new ArrayList<>();
    long at = 0;
    for (int i = random.nextInt(1, 40); i > 0; i--) {
      String degrees = Integer.toString(random.nextInt(138, 146));
      points.add(new Line.Point(at, fahrenheit(degrees), random.nextInt(5) == 0));
      at += random.nextLong(1, 8) * MINUTE;
    }
    return new Line(points, MINUTE, fahrenheit("33") - fahrenheit("32"));
  }
}
