package org.flitchbook.sums;

import static org.flitchbook.sums.Line.MINUTE;
import static org.flitchbook.sums.Line.fahrenheit;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.flitchbook.sums.BandTime.State;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class BandTimeTest {

  private static final long SEED = 13080;

  private static BandTime fall(Line line) {
    return BandTime.falling(line, Shift.AS_WRITTEN, fahrenheit("130"), fahrenheit("80"));
  }

  private static BandTime rise(Line line) {
    return BandTime.rising(line, Shift.AS_WRITTEN, fahrenheit("50"), fahrenheit("130"));
  }

  private static String minutes(long millis) {
    return BigDecimal.valueOf(millis)
        .divide(BigDecimal.valueOf(MINUTE), 3, RoundingMode.HALF_UP)
        .stripTrailingZeros()
        .toPlainString();
  }

  private static void check(
      BandTime time, State state, String longest, String shortest, String interpolated) {
    assertEquals(state, time.state());
    assertEquals(longest, minutes(time.longest()), "longest");
    assertEquals(shortest, minutes(time.shortest()), "shortest");
    assertEquals(
        interpolated, time.interpolated().map(BandTimeTest::minutes).orElse("-"), "interpolated");
  }

  /**
   * From 130 °F to 80 °F; minutes. Interpolated by hand: t = ta + (Ta − Tx)/(Ta − Tb)·(tb − ta).
   */
  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          # fact                                   | readings                                | state | longest | shortest | interpolated
          at the top the clock starts              | 0:150 10:130 20:129 30:81 40:80         | DONE  | 30 | 10 | 30
          a tenth below the top is inside          | 0:150 10:129.9 20:100 30:80             | DONE  | 30 | 10 | 20.05
          a tenth above the bottom is still inside | 0:150 10:130 20:100 30:80.1 40:80       | DONE  | 30 | 10 | 30
          between two readings on either side      | 0:140 10:120 20:90 30:70                | DONE  | 30 | 10 | 20
          the whole band in one interval           | 0:180 10:30                             | DONE  | 10 | 0  | 3.333
          the peak comes later than a first fall   | 0:131 10:129 20:140 30:120 40:70        | DONE  | 20 | 0  | 13
          the last of several readings at the top  | 0:150 10:130 20:130 30:130 40:100 50:80 | DONE  | 20 | 0  | 20
          never reached: from the peak             | 0:100 10:120 20:110 30:80               | DONE  | 20 | 10 | 20
          never reached: from the first of equals  | 0:100 10:120 20:120 30:80               | DONE  | 20 | 10 | 20
          warmed again inside the band             | 0:140 10:120 20:90 30:95 40:80          | DONE  | 40 | 20 | 35
          out below and in again: the clock runs   | 0:140 10:120 20:79 30:81 40:79          | DONE  | 40 | 20 | 30
          above the top again: the clock runs      | 0:140 10:120 20:135 30:120 40:80        | DONE  | 40 | 20 | 35
          still inside at the last reading         | 0:140 10:120 20:90                      | RUNNING | 20 | 10 | -
          below, and inside at the last reading    | 0:140 10:120 20:79 30:81                | RUNNING | 30 | 20 | -
          above the top to the last reading        | 0:140 10:150 20:131                     | BEFORE | 0 | 0 | -
          at the top to the last reading           | 0:140 10:130                            | BEFORE | 0 | 0 | -
          still warming towards the top            | 0:100 10:110 20:120                     | BEFORE | 0 | 0 | -
          begins inside                            | 0:120 10:100 20:80                      | BEGINS_INSIDE | 0 | 0 | -
          begins at the top                        | 0:130 10:100 20:80                      | DONE  | 20 | 0  | 20
          never above the bottom                   | 0:70 10:60 20:50                        | BEFORE | 0 | 0 | -
          never above the bottom, warmest later    | 0:50 10:80 20:60 30:40                  | BEFORE | 0 | 0 | -
          """)
  void a_fall_is_counted_against_the_lot(
      String fact, String readings, State state, String longest, String shortest, String between) {
    check(fall(Line.every(10, readings)), state, longest, shortest, between);
  }

  /** From 50 °F to 130 °F; minutes. */
  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          # fact                                    | readings                              | state | longest | shortest | interpolated
          at the bottom the clock starts            | 0:40 10:50 20:90 30:130               | DONE  | 20 | 0  | 20
          a tenth above the bottom is inside        | 0:40 10:50.1 20:90 30:130             | DONE  | 30 | 10 | 20.099
          a tenth below the top is still inside     | 0:50 10:90 20:129.9 30:130            | DONE  | 30 | 10 | 30
          between two readings on either side       | 0:40 10:60 20:120 30:140              | DONE  | 30 | 10 | 20
          the whole band in one interval            | 0:30 10:180                           | DONE  | 10 | 0  | 5.333
          the first time at the top stops the clock | 0:50 10:130 20:100 30:140             | DONE  | 10 | 0  | 10
          the last time at the bottom starts it     | 0:40 10:60 20:50 30:90 40:130         | DONE  | 20 | 0  | 20
          never reached: until back at the bottom   | 0:40 10:60 20:100 30:60 40:50         | DONE  | 40 | 20 | 35
          never reached, still warm                 | 0:40 10:60 20:100 30:60               | RUNNING | 30 | 20 | -
          never reached: the longer time counts     | 0:40 10:90 20:40 30:60 40:70 50:60 60:50 | DONE | 40 | 20 | 35
          never reached: the later of equals counts | 0:40 10:90 20:40 30:90 40:40          | DONE | 20 | 0 | 16
          never reached, the later still warm       | 0:40 10:90 20:40 30:60 40:70          | RUNNING | 20 | 10 | -
          never reached, the shorter still warm     | 0:40 10:90 20:80 30:70 40:40 50:60    | RUNNING | 40 | 20 | -
          still below the bottom                    | 0:40 10:45 20:50                      | BEFORE | 0 | 0 | -
          begins inside                             | 0:60 10:90 20:130                     | BEGINS_INSIDE | 0 | 0 | -
          begins above the top                      | 0:140 10:150                          | BEGINS_INSIDE | 0 | 0 | -
          begins inside and falls back              | 0:60 10:55 20:50                      | BEGINS_INSIDE | 0 | 0 | -
          begins inside, never reached              | 0:90 10:95 20:40                      | BEGINS_INSIDE | 0 | 0 | -
          begins inside, then seen for longer       | 0:60 10:50 20:60 30:90 40:50          | DONE  | 30 | 10 | 30
          """)
  void a_rise_is_counted_against_the_lot(
      String fact, String readings, State state, String longest, String shortest, String between) {
    check(rise(Line.every(10, readings)), state, longest, shortest, between);
  }

  @Test
  void a_curve_without_readings_was_not_in_the_band() {
    Line none = new Line(List.of(), MINUTE, 0);
    assertEquals(State.BEFORE, fall(none).state());
    assertEquals(State.BEFORE, rise(none).state());
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          # fact                                    | readings                       | longest | shortest | gap
          three intervals and five minutes are none | 0:131 1:129 2:90 7:81 8:79     | 8   | 6  | false
          a gap over the bottom                     | 0:131 1:129 2:96 49:64         | 49  | 1  | true
          a hand reading shortens it                | 0:131 1:129 2:96 h23:79 49:64  | 24  | 1  | true
          a gap over the top                        | 0:131 40:129 41:79             | 41  | 0  | true
          a gap inside the band is no crossing      | 0:131 1:129 40:90 41:79        | 41  | 39 | false
          a gap after the clock has stopped         | 0:131 1:129 2:80 90:60         | 2   | 0  | false
          """)
  void a_gap_over_a_crossing_leaves_a_longest_and_a_shortest_time(
      String fact, String readings, String longest, String shortest, boolean gap) {
    BandTime time = fall(Line.of(readings));
    assertEquals(longest, minutes(time.longest()));
    assertEquals(shortest, minutes(time.shortest()));
    assertEquals(gap, time.gap());
  }

  @ParameterizedTest(name = "{0} min apart, {1} min a reading: gap {2}")
  @CsvSource({
    "5, 1, false",
    "6, 1, true",
    "15, 5, false",
    "16, 5, true",
    "5, 0, false",
    "6, 0, true"
  })
  void a_gap_is_longer_than_3_intervals_and_5_minutes(int apart, int interval, boolean gap) {
    assertEquals(gap, Line.every(interval, "0:100 " + apart + ":100").gapAfter(0));
    assertFalse(Line.every(interval, "0:100 " + apart + ":100").gapAfter(1));
  }

  /** Time that was spent elsewhere: what may have been lengthens, what surely was the rest. */
  @Test
  void time_spent_elsewhere_is_added() {
    BandTime time = fall(Line.every(10, "0:140 10:120 20:90 30:70")).plus(5 * MINUTE, 2 * MINUTE);
    check(time, State.DONE, "35", "12", "22");
    assertEquals(0, time.start());
    assertEquals(3, time.end());
    BandTime running = fall(Line.every(10, "0:140 10:120 20:90")).plus(5 * MINUTE, 2 * MINUTE);
    check(running, State.RUNNING, "25", "12", "-");
  }

  /** A gap may have hidden the top: the clock starts before it, and no crossing was seen. */
  @Test
  void a_peak_behind_a_gap_is_clocked_from_before_the_gap() {
    BandTime hidden = fall(Line.of("0:90 1:100 20:120 21:110 22:80"));
    check(hidden, State.DONE, "21", "1", "2");
    assertEquals(1, hidden.start());
    BandTime seen = fall(Line.of("0:90 1:100 2:120 3:110 4:80"));
    check(seen, State.DONE, "2", "1", "2");
    assertEquals(2, seen.start());
  }

  /** A minute as written lasts until just before the next. */
  @Test
  void a_hand_reading_counts_at_the_worse_end_of_its_minute() {
    BandTime time = fall(Line.every(0, "h0:131 h10:120 h20:90 h30:79"));
    assertEquals(31 * MINUTE - 1, time.longest());
    assertEquals(9 * MINUTE + 1, time.shortest());
  }

  @ParameterizedTest(name = "{0}: {1}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          # shift    | state         | longest
          AS_WRITTEN | DONE          | 30
          UP         | DONE          | 40
          DOWN       | DONE          | 40
          """)
  void the_uncertainty_moves_both_crossings(Shift shift, State state, String longest) {
    Line line = Line.every(10, "0:140 10:130 20:100 30:81 40:80 50:79.4").within("0.5 °F");
    BandTime time = BandTime.falling(line, shift, fahrenheit("130"), fahrenheit("80"));
    assertEquals(state, time.state());
    assertEquals(longest, minutes(time.longest()));
  }

  @Test
  void a_peak_that_only_the_uncertainty_lifts_to_the_top_is_reached_only_with_it() {
    Line line = Line.every(10, "0:100 10:129.6 20:129.7 30:100 40:79").within("0.5 °F");
    long top = fahrenheit("130");
    long bottom = fahrenheit("80");
    assertEquals("20", minutes(BandTime.falling(line, Shift.UP, top, bottom).longest()));
    assertEquals(2, BandTime.falling(line, Shift.DOWN, top, bottom).start());
    assertEquals(
        "30",
        minutes(BandTime.rising(line.later(0), Shift.DOWN, fahrenheit("100"), top).longest()));
  }

  @Test
  void start_and_end_point_at_the_evidence() {
    BandTime time = fall(Line.every(10, "0:150 10:131 20:129 30:90 40:79 50:70"));
    assertEquals(1, time.start());
    assertEquals(4, time.end());
  }

  @Test
  void moving_all_times_moves_nothing() {
    SplittableRandom random = new SplittableRandom(SEED);
    for (int i = 0; i < 2_000; i++) {
      Line line = any(random);
      long shift = random.nextLong(-1_000_000_000L, 1_000_000_000L);
      String message = "seed " + SEED + ", round " + i + ": " + line;
      assertEquals(fall(line), fall(line.later(shift)), message);
      assertEquals(rise(line), rise(line.later(shift)), message);
    }
  }

  @Test
  void a_deeper_band_never_takes_less_time_to_fall_through() {
    SplittableRandom random = new SplittableRandom(SEED);
    for (int i = 0; i < 2_000; i++) {
      Line line = any(random);
      long top = fahrenheit("130");
      BandTime shallow = BandTime.falling(line, Shift.AS_WRITTEN, top, fahrenheit("90"));
      BandTime deep = BandTime.falling(line, Shift.AS_WRITTEN, top, fahrenheit("70"));
      String message = "seed " + SEED + ", round " + i + ": " + line;
      if (shallow.state() == State.DONE || shallow.state() == State.RUNNING) {
        assertTrue(deep.longest() >= shallow.longest(), message);
        assertTrue(deep.shortest() >= shallow.shortest(), message);
      }
    }
  }

  @Test
  void the_interpolated_time_lies_between_the_shortest_and_the_longest() {
    SplittableRandom random = new SplittableRandom(SEED);
    int done = 0;
    for (int i = 0; i < 4_000; i++) {
      Line line = any(random);
      for (BandTime time : List.of(fall(line), rise(line))) {
        String message = "seed " + SEED + ", round " + i + ": " + time + " of " + line;
        assertTrue(time.shortest() <= time.longest(), message);
        Optional<Long> between = time.interpolated();
        assertEquals(time.state() == State.DONE, between.isPresent(), message);
        if (between.isPresent()) {
          done++;
          assertTrue(time.shortest() <= between.get() && between.get() <= time.longest(), message);
        }
      }
    }
    assertEquals(3_965, done, "seed " + SEED);
  }

  @Test
  void one_more_reading_alike_never_shortens_a_clock_that_runs() {
    SplittableRandom random = new SplittableRandom(SEED);
    for (int i = 0; i < 2_000; i++) {
      Line line = any(random);
      BandTime time = fall(line);
      if (time.state() != State.RUNNING) {
        continue;
      }
      List<Line.Point> more = new ArrayList<>(line.points());
      long after = more.get(more.size() - 1).at() + MINUTE;
      long level = more.get(more.size() - 1).level();
      more.add(new Line.Point(after, level, false));
      BandTime longer = fall(new Line(more, line.interval(), 0));
      assertTrue(longer.longest() > time.longest(), "seed " + SEED + ", round " + i + ": " + line);
    }
  }

  /** A walk of whole degrees that tends to warm first and to cool later. */
  private static Line any(SplittableRandom random) {
    List<Line.Point> points = new ArrayList<>();
    int size = random.nextInt(2, 40);
    long at = random.nextLong(1_000_000);
    int degrees = random.nextInt(35, 70);
    for (int i = 0; i < size; i++) {
      points.add(new Line.Point(at, fahrenheit(Integer.toString(degrees)), false));
      at += random.nextLong(1, 20) * MINUTE;
      degrees += random.nextInt(25) - (i < size / 2 ? 6 : 19);
    }
    return new Line(points, 5 * MINUTE, 0);
  }
}
