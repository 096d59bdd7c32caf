package org.flitchbook.doubt;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Collections;
import java.util.List;
import java.util.stream.IntStream;
import org.flitchbook.check.Bench;
import org.flitchbook.check.Judgement;
import org.flitchbook.check.Verdict;
import org.flitchbook.input.Fault;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What people write, and when they write it. */
final class HandsTest {

  private static final String TURN = "one turn a day";

  /** What is said of the lot, without the rules on instruments, which other tests look at. */
  private static List<String> said(Bench bench) {
    return bench.doubts().stream()
        .map(fault -> fault.severity().word() + " " + fault.rule())
        .toList();
  }

  private static List<String> words(String said) {
    return said.equals("nothing") ? List.of() : List.of(said.split("; "));
  }

  private static String turned(String time, String entered) {
    return "cure," + time + ",turned,,,,MA,,,,,," + entered;
  }

  @ParameterizedTest
  @CsvSource({
    "2026-02-10 08:00,       nothing",
    "2026-02-10 08:15:00,    nothing",
    "2026-02-10 08:16:01,    note late entry",
    "2026-02-11 08:00,       note late entry",
    "2026-02-11 08:01:00,    note late entry",
    "2026-02-11 08:01:01,    ask entered days later",
  })
  void an_entry_is_late_by_the_time_that_surely_lies_between(String entered, String said) {
    Bench bench = Bench.book().write(turned("2026-02-10 08:00", entered));
    assertEquals(words(said), said(bench));
  }

  @Test
  void a_sheet_of_late_entries_is_one_finding_at_the_latest_of_them() {
    Bench bench =
        Bench.book()
            .write(
                turned("2026-02-10 08:00", "2026-02-10 09:00"),
                turned("2026-02-11 08:00", "2026-02-11 11:30"));
    Fault late = bench.doubts().get(0);
    assertEquals("turned entered 3 h later, the latest of 2", late.found().toString());
    assertEquals("2026-02-24/cure.csv:4:entered", late.place().toString());
  }

  @ParameterizedTest
  @CsvSource({
    "4, 10, 120, nothing",
    "5, 10, 60,  nothing",
    "5, 10, 61,  note entered together",
    "5, 30, 120, note entered together",
    "5, 31, 120, nothing",
  })
  void entries_of_a_long_time_typed_in_two_minutes_were_entered_together(
      int entries, int secondsApart, int minutesApart, String said) {
    Bench bench = Bench.book();
    for (int i = 0; i < entries; i++) {
      int minutes = i * minutesApart / (entries - 1);
      int seconds = i * secondsApart;
      bench.write(
          turned(
              "2026-02-10 %02d:%02d:00".formatted(8 + minutes / 60, minutes % 60),
              "2026-02-10 10:%02d:%02d".formatted(seconds / 60, seconds % 60)));
    }
    assertEquals(
        words(said), said(bench).stream().filter(each -> each.endsWith("together")).toList());
  }

  /** The rows as they stand meet the limit: only the time of typing gives them away. */
  @Test
  void a_week_of_turns_typed_on_the_eighth_day_shows_nothing() {
    Bench bench =
        Bench.book()
            .own(TURN, "cure", "\"kind\": \"cadence\", \"what\": \"turned\", \"every\": \"28 h\"")
            .write("cure,2026-02-10 09:00,into cure,F1", "cure,2026-02-17 12:00,out of cure");
    for (int day = 11; day <= 17; day++) {
      bench.write(
          turned(
              "2026-02-" + day + " 08:00", "2026-02-17 12:0" + (day - 11) / 5 + ":" + (10 + day)));
    }
    Judgement judged = bench.judge();
    assertEquals(Verdict.NOT_SHOWN, judged.findings().get(0).verdict());
    assertEquals(
        List.of("note entered together", "note late entry", "ask entered days later"), said(bench));
  }

  @ParameterizedTest
  @CsvSource({"5, nothing", "6, note same value again", "7, note same value again"})
  void six_equal_readings_running_are_a_pattern(int times, String said) {
    Bench bench = Bench.book().write("cure,2026-02-10 09:00,into cure,F1");
    Collections.nCopies(times, "36.2").forEach(value -> reading(bench, value));
    assertEquals(words(said), said(bench));
  }

  @Test
  void another_value_between_breaks_the_row() {
    Bench bench = Bench.book().write("cure,2026-02-10 09:00,into cure,F1");
    List.of("36.2", "36.2", "36.2", "36.2", "36.2", "36.3", "36.2")
        .forEach(value -> reading(bench, value));
    assertEquals(List.of(), said(bench));
  }

  private int minute;

  private void reading(Bench bench, String value) {
    minute++;
    bench.write("cure,2026-02-10 10:%02d,cooler temperature,F1,%s,°F".formatted(minute, value));
  }

  @ParameterizedTest
  @CsvSource({
    "8, 1, nothing",
    "9, 1, note rounded readings",
    "17, 3, nothing",
    "18, 2, note rounded readings"
  })
  void readings_that_nearly_all_end_in_a_half_degree_were_rounded(int round, int odd, String said) {
    Bench bench = Bench.book().write("cure,2026-02-10 09:00,into cure,F1");
    IntStream.range(0, round).forEach(i -> reading(bench, 36 + i % 2 + (i % 3 == 0 ? ".5" : ".0")));
    IntStream.range(0, odd).forEach(i -> reading(bench, "36.3"));
    assertEquals(words(said), said(bench));
  }

  /** A thermometer of whole degrees shows no tenths. */
  @Test
  void whole_degrees_are_not_rounded_tenths() {
    Bench bench = Bench.book().write("cure,2026-02-10 09:00,into cure,F1");
    IntStream.range(0, 20).forEach(i -> reading(bench, String.valueOf(36 + i % 3)));
    assertEquals(List.of(), said(bench));
  }

  @ParameterizedTest
  @CsvSource({
    "cure,  4427.04, nothing", "cure, 4427.03, ask weight off its step",
    "cure,  4763.88, nothing", "cure, 4763.89, ask weight off its step",
    "chill, 2800,    ask weight off its step",
  })
  void a_weight_follows_from_the_one_before(String sheet, String grams, String said) {
    Bench bench =
        Bench.book()
            .write(
                "cure,2026-02-10 08:00,green weight,,4812,g,MA,S-10",
                sheet + ",2026-02-17 08:00,weight,," + grams + ",g");
    assertEquals(words(said), said(bench));
  }

  /** 5 lb 8 oz written as 5.8 lb is 6 % too much after the cure, where nothing is gained. */
  @Test
  void pounds_and_ounces_written_as_decimal_pounds_are_found_out() {
    Bench bench =
        Bench.book()
            .write(
                "cure,2026-02-10 08:00,green weight,,5.7,lb",
                "cure,2026-02-17 08:00,weight,,5.8,lb");
    Fault fault = bench.doubts().get(0);
    assertEquals("5.8 lb, 101.754 % of the weight before", fault.found().toString());
  }

  @Test
  void steps_between_that_were_not_weighed_widen_the_range() {
    Bench bench =
        Bench.book()
            .write(
                "cure,2026-02-10 08:00,green weight,,4812,g,MA,S-10",
                "smoke,2026-02-18 08:00,weight,,3400,g,MA,S-10");
    assertEquals(List.of(), said(bench));
  }

  @Test
  void the_weight_before_a_piece_lost_its_rind_is_less_the_rind() {
    Bench bench =
        Bench.book()
            .write(
                "cure,2026-02-10 08:00,rind,,on",
                "cure,2026-02-10 08:01,green weight,,5400,g,MA,S-10",
                "cure,2026-02-10 08:02,rind weight,,540,g,MA,S-10",
                "cure,2026-02-17 08:00,weight,,4690,g,MA,S-10");
    assertEquals(List.of(), said(bench));
  }

  @ParameterizedTest
  @CsvSource({
    "100,   nothing", "99.9,  note scale coarse for its load",
    "20,    note scale coarse for its load", "19.9, ask scale too coarse",
  })
  void a_scale_whose_step_is_a_large_share_of_the_cure_is_too_coarse(String grams, String said) {
    Bench bench =
        Bench.book().write("cure,2026-02-10 08:00,curing salt,C1," + grams + ",g,MA,S-10");
    assertEquals(
        words(said),
        said(bench).stream()
            .filter(each -> each.contains("scale ") || each.contains("coarse"))
            .filter(each -> !each.contains("finer"))
            .toList());
  }

  /** Half a gram on a scale of whole grams: written from memory, or from another scale. */
  @ParameterizedTest(name = "{0} {1} on {2}: {3}")
  @CsvSource({
    "4812,   g,  S-10,  nothing",
    "4812.5, g,  S-10,  ask finer than its scale",
    "4812.0, g,  S-10,  nothing",
    "4.8125, kg, S-10,  ask finer than its scale",
    "4.8120, kg, S-10,  nothing",
    "4.812,  kg, S-10,  nothing",
    "10.61,  lb, S-10,  nothing",
    "11.53,  g,  S-001, nothing",
    "11.535, g,  S-001, ask finer than its scale",
    "4812.5, g,  HT-0,  nothing",
    "4815,   g,  S-LB,  nothing",
    "4812,   g,  S-LB,  ask finer than its scale",
    "4.815,  kg, S-LB,  nothing",
    "4.812,  kg, S-LB,  ask finer than its scale",
    "10.61,  lb, S-LB,  nothing",
    "10.615, lb, S-LB,  ask finer than its scale",
  })
  void a_weight_between_two_steps_was_not_read_off_its_scale(
      String value, String unit, String scale, String said) {
    Bench bench =
        Bench.book().write("cure,2026-02-10 08:00,weight,," + value + "," + unit + ",MA," + scale);
    assertEquals(words(said), said(bench).stream().filter(each -> each.contains("finer")).toList());
  }

  @Test
  void a_sum_of_such_a_weight_keeps_the_lot() {
    Judgement judged =
        Bench.book()
            .rule("us.424.22-b-3.nitrite")
            .write(
                "cure,2026-02-10 07:50,rind,,off",
                "cure,2026-02-10 08:00,green weight,,4812,g,MA,S-10",
                "cure,2026-02-10 08:10,curing salt,C1,11.505,g",
                "cure,2026-02-10 08:20,into cure,F1")
            .judge();
    assertEquals(Verdict.NOT_SHOWN, judged.verdict());
  }

  @ParameterizedTest
  @CsvSource({
    "C1, 15.00, nothing",
    "C1, 14.99, stop curing salt out of its range",
    "C1, 35.00, nothing",
    "C1, 35.01, stop curing salt out of its range",
    "C1, 2.5,   stop curing salt out of its range",
    "CX, 2.5,   nothing",
  })
  void a_cure_is_used_at_the_rate_of_its_strength(String lot, String grams, String said) {
    Bench bench =
        Bench.book()
            .rule("us.424.22-b-3.nitrite")
            .write(
                "cure,2026-02-10 08:00,green weight,,10000,g,MA,S-10",
                "cure,2026-02-10 08:10,curing salt," + lot + "," + grams + ",g");
    assertEquals(words(said), said(bench));
  }

  /** The decimal point one place to the left: 15 ppm is under every ceiling, and cures nothing. */
  @Test
  void a_tenth_of_the_cure_passes_the_ceiling_and_is_stopped_all_the_same() {
    Bench bench =
        Bench.book()
            .rule("us.424.22-b-3.nitrite")
            .write(
                "cure,2026-02-10 07:50,rind,,off",
                "cure,2026-02-10 08:00,green weight,,4812,g,MA,S-10",
                "cure,2026-02-10 08:10,curing salt,C1,1.15,g");
    Judgement judged = bench.judge();
    assertEquals(Verdict.NOT_SHOWN, judged.verdict());
    assertEquals(List.of("stop curing salt out of its range"), said(bench));
  }
}
