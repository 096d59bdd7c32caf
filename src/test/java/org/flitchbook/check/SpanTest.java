package org.flitchbook.check;

import static org.flitchbook.check.Said.formulas;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The time inside a band, cooling and coming up. */
final class SpanTest {

  /** FSIS Appendix B, 1999, option 1: 130 to 80 °F in 1.5 h, 80 to 40 °F in 5 h. */
  private static final String COOLING = "us.b99.cooling-1";

  private static final String RISE = "08:00:00..10:59:00/60 45>150; ";
  private static final String COLD = "; 13:00:00..17:00:00/60 60>35";

  private static Bench smoked() {
    return Bench.book()
        .write(
            "smoke,08:00:00,into smoke,SM",
            "smoke,11:00:00,out of smoke",
            "chill,11:05:00,into chill,F2",
            "chill,18:00:00,out of chill");
  }

  private static Bench cooled(String instrument, String fall) {
    return smoked().rule(COOLING).core("P1", instrument, RISE + fall + COLD);
  }

  private static Part stage(Bench bench, int index) {
    return bench.finding(COOLING).parts().get(index);
  }

  private static String said(Part part) {
    return part.verdict().words()
        + part.measured().map(measured -> " " + Bench.shown(measured.value())).orElse("");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        // instrument | from 11:00:00, 130.0 °F | first stage
        "LG-0 | 11:00:00 130.0; 11:01:00..12:29:00/60 129>81; 12:30:00 80.0 | met 90.00 min",
        "LG-0 | 11:00:00 130.0; 11:01:00..12:29:00/60 129>81; 12:29:59 80.0; 12:30:59 79 | met"
            + " 89.98 min",
        "LG-0 | 11:00:00 130.0; 11:01:00..12:29:00/60 129>81; 12:30:00 80.1; 12:30:01 80.0 | not"
            + " met 90.02 min",
        "LG-0 | 11:00:00 130.0; 11:01:00..12:29:00/60 129>81; 12:29:30 80.5; 12:30:30 79.5 | not"
            + " shown 90.50 min",
        // with U = 0.5 °F both crossings have to be seen half a degree further out
        "LG-A | 11:00:00 130.5; 11:01:00..12:29:00/60 129>81; 12:30:00 79.5 | met 90.00 min",
        "LG-A | 11:00:00 130.5; 11:01:00..12:29:00/60 129>81; 12:30:00 79.6; 12:31:00 79 | not"
            + " shown 91.00 min",
      })
  void the_first_stage_is_judged_to_the_second(String instrument, String fall, String said) {
    assertEquals(said, said(stage(cooled(instrument, fall), 0)));
  }

  @ParameterizedTest
  @CsvSource({
    "16:30:00, met 300.00 min",
    "16:29:59, met 299.98 min",
    "16:30:01, not met 300.02 min"
  })
  void the_second_stage_is_judged_to_the_second(String end, String said) {
    Bench bench =
        smoked()
            .rule(COOLING)
            .core(
                "P1",
                "LG-0",
                RISE
                    + "11:00:00..11:29:00/60 130>81; 11:30:00 80.0; 11:31:00..16:29:00/60"
                    + " 79.9>40.1; "
                    + end
                    + " 40.0; 17:30:00 38");
    assertEquals(said, said(stage(bench, 1)));
  }

  /** 120 to 80 °F in 1 h, 120 to 55 °F in 6 h: option 2 of the same, both stages from one start. */
  @ParameterizedTest
  @CsvSource({"12:00:00, met", "12:00:01, not met"})
  void option_2_is_judged_likewise(String end, String verdict) {
    String limit = "us.b99.cooling-2";
    Bench bench =
        smoked()
            .rule(limit)
            .core(
                "P1",
                "LG-0",
                RISE + "11:00:00 120.0; 11:01:00..11:59:00/60 119>81; " + end + " 80.0" + COLD);
    assertEquals(verdict, bench.finding(limit).parts().get(0).verdict().words());
  }

  /** Food Code 3-501.14(A): 135 to 70 °F in 2 h, 135 to 41 °F in 6 h. */
  @ParameterizedTest
  @CsvSource({
    "13:00:00, 17:00:00, met, met",
    "13:00:01, 17:00:00, not met, met",
    "13:00:00, 17:00:01, met, not met"
  })
  void retail_cooling_is_judged_likewise(String first, String last, String a, String b) {
    String limit = "us-retail.fc22.3-501.14-a.cooling";
    Bench bench =
        smoked()
            .rule(limit)
            .core(
                "P1",
                "LG-0",
                RISE
                    + "11:00:00 135.0; 11:01:00..12:59:00/60 134>71; "
                    + first
                    + " 70.0; 13:01:00..16:59:00/60 69>41.1; "
                    + last
                    + " 41.0; 17:30:00 39");
    List<Part> parts = bench.finding(limit).parts();
    assertEquals(a, parts.get(0).verdict().words());
    assertEquals(b, parts.get(1).verdict().words());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        // the last reading above 80 °F, the first below it after the gap; hand reading
        "11:30:00 | 12:30:00 | | met",
        "11:30:00 | 12:40:00 | | not shown",
        "12:31:00 | 12:59:00 | | not shown",
        "12:32:00 | 12:59:00 | | not met",
        "11:30:00 | 12:59:00 | 12:20,79.0 | met",
        "11:30:00 | 12:59:00 | 12:20,81.0 | not shown",
        "11:30:00 | 12:59:00 | 12:35,81.0 | not met",
        "11:30:00 | 12:59:00 | 12:29,80.0 | met",
        "11:30:00 | 12:59:00 | 12:30,80.0 | not shown",
      })
  void a_crossing_in_a_gap_counts_at_its_latest_and_misses_at_its_earliest(
      String last, String next, String hand, String verdict) {
    String fall = "11:00:00 130.0; 11:01:00.." + last + "/60 129>85; " + next + " 60.0";
    Bench bench = cooled("LG-0", fall);
    if (hand != null) {
      String[] reading = hand.split(",", -1);
      bench.write("chill," + reading[0] + ",internal temperature,," + reading[1] + ",°F");
    }
    assertEquals(verdict, stage(bench, 0).verdict().words());
  }

  @Test
  void a_core_that_never_fell_below_the_band_is_not_shown() {
    Bench bench = smoked().rule(COOLING).core("P1", "LG-0", RISE + "11:00:00..17:59:00/60 150>131");
    assertEquals("not shown", stage(bench, 0).verdict().words());
    assertEquals(Verdict.NOT_SHOWN, bench.finding(COOLING).verdict());
  }

  /** The clock of a core that never reached the top starts at the worst probe's peak. */
  @ParameterizedTest
  @CsvSource({"12:30:00, met 90.00 min", "12:30:01, not met 90.02 min"})
  void a_core_that_never_reached_the_top_is_clocked_from_its_peak(String end, String said) {
    Bench bench =
        smoked()
            .rule(COOLING)
            .core(
                "P1",
                "LG-0",
                "08:00:00..10:59:00/60 45>124; 11:00:00 125.0; 11:01:00..12:29:00/60 124>81; "
                    + end
                    + " 80.0"
                    + COLD);
    assertEquals(said, said(stage(bench, 0)));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "| not shown",
        "smoke,11:00,internal temperature,,131.0,°F | met",
        "smoke,11:00,internal temperature,,129.0,°F | not shown",
      })
  void a_log_that_begins_inside_the_band_wants_a_hand_reading(String hand, String verdict) {
    Bench bench = smoked().rule(COOLING).core("P1", "LG-0", "11:10:00..12:10:00/60 125>79" + COLD);
    if (hand != null) {
      bench.write(hand);
    }
    assertEquals(verdict, stage(bench, 0).verdict().words());
  }

  @ParameterizedTest
  @CsvSource({"12:31:00, not shown", "12:32:00, not met"})
  void a_log_that_ends_inside_the_band_shows_nothing_or_the_miss(String last, String verdict) {
    Bench bench =
        smoked()
            .rule(COOLING)
            .core("P1", "LG-0", RISE + "11:00:00 130.0; 11:01:00.." + last + "/60 129>90");
    assertEquals(verdict, stage(bench, 0).verdict().words());
    assertEquals("not shown", stage(bench, 1).verdict().words());
  }

  @Test
  void a_re_crossing_keeps_the_clock_running() {
    String fall =
        "11:00:00 130.0; 11:01:00..11:59:00/60 129>81; 12:00:00 80.0; 12:01:00 80.1; 12:02:00 80.0";
    assertEquals("met 62.00 min", said(stage(cooled("LG-0", fall), 0)));
    String late =
        "11:00:00 130.0; 11:01:00..11:59:00/60 129>81; 12:00:00 79.0; 12:31:00 80.1; 12:32:00 79";
    assertEquals("not met", stage(cooled("LG-0", late), 0).verdict().words());
  }

  @Test
  void of_two_probes_the_worst_counts() {
    String fast = RISE + "11:00:00..11:59:00/60 130>80; 12:00:00..14:00:00/60 79>35";
    String slow = RISE + "11:00:00..12:59:00/60 130>80; 13:00:00..16:00:00/60 79>35";
    Finding finding =
        smoked().rule(COOLING).core("P1", "LG-0", fast).core("P2", "LG-0", slow).finding(COOLING);
    assertEquals(Verdict.NOT_MET, finding.verdict());
    assertEquals("P2", finding.parts().get(0).probe());
  }

  @ParameterizedTest
  @CsvSource({
    "10:30:00, pending",
    "11:30:00, pending",
    "12:30:00, pending",
    "12:31:00, not shown",
    "12:32:00, not met",
  })
  void while_it_cools_the_stage_is_pending_until_it_is_broken(String at, String verdict) {
    Bench bench =
        smoked()
            .rule(COOLING)
            .core("P1", "LG-0", RISE + "11:00:00 130.0; 11:01:00..14:00:00/60 129>90");
    assertEquals(verdict, Bench.found(bench.judge(at), COOLING).parts().get(0).verdict().words());
  }

  /** The log fell silent in the band; the limit's time runs out without a reading. */
  @ParameterizedTest
  @CsvSource({"12:30:00, pending", "12:31:01, not shown"})
  void its_time_runs_out_without_a_reading(String at, String verdict) {
    Bench bench =
        smoked()
            .rule(COOLING)
            .core("P1", "LG-0", RISE + "11:00:00 130.0; 11:01:00..11:40:00/60 129>100");
    assertEquals(verdict, Bench.found(bench.judge(at), COOLING).parts().get(0).verdict().words());
  }

  /** A log written to the minute: a minute more than it says. */
  @ParameterizedTest
  @CsvSource({"12:29, met 90.00 min", "12:30, not shown 91.00 min", "12:31, not met 92.00 min"})
  void a_time_written_to_the_minute_counts_at_its_worse_end(String end, String said) {
    Bench bench =
        smoked()
            .rule(COOLING)
            .core(
                "P1",
                "LG-0",
                "08:00..10:59/60 45>150; 11:00 130.0; 11:01..12:28/60 129>81; "
                    + end
                    + " 80.0; 13:00..17:00/60 60>35");
    assertEquals(said, said(stage(bench, 0)));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        // FSIS-GD-2021-14 p. 24: 50 to 130 °F in 6 h
        "met     | 08:00:00 50.0; 08:01:00..13:59:00/60 51>129; 14:00:00 130.0",
        "not met | 08:00:00 50.0; 08:01:00..13:59:00/60 51>129; 14:00:01 130.0",
        "met     | 08:00:00 49.0; 08:10:00 50.0; 08:11:00..14:09:00/60 51>129; 14:10:00 130.0",
        "not shown | 08:00:00 50.1; 08:01:00..12:59:00/60 51>129; 13:00:00 130.0",
        "not met | 08:00:00 50.0; 08:01:00..12:00:00/60 51>129.9; 12:01:00..15:00:00/60 120>49",
        "met     | 08:00:00 50.0; 08:01:00..10:00:00/60 51>129.9; 10:01:00..13:30:00/60 120>49",
        "not shown | 08:00:00 50.0; 08:01:00..12:00:00/60 51>129.9; 12:01:00..13:00:00/60 120>60",
      })
  void the_come_up_runs_from_the_last_low_to_the_first_high(String verdict, String readings) {
    String limit = "us.a21.come-up";
    Bench bench =
        Bench.book()
            .product("class", "\"fully cooked, not shelf stable\"")
            .rule(limit)
            .write(
                "smoke,08:00:00,into smoke,SM",
                "smoke,14:30:00,out of smoke",
                "chill,14:35,into chill,F2",
                "chill,18:00,out of chill")
            .core("P1", "LG-0", readings);
    assertEquals(verdict, bench.finding(limit).verdict().words());
  }

  /** The core takes 5 h from 50 to 130 °F; what the drying adds beyond 2 h may take an hour. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        // verdict | fridge of the drying, read each minute from 00:00 to 07:30
        "met 300.00 min       | 00:00:00..07:30:00/60 38>38",
        "met 300.00 min       | 00:00:00..07:30:00/60 41>41",
        "met 300.00 min       | 00:00:00..01:00:00/60 38>38; 01:01:00..02:58:00/60 45>45;"
            + " 02:59:00..07:30:00/60 38>38",
        "met 360.00 min       | 00:00:00..01:00:00/60 38>38; 01:01:00..03:59:00/60 45>45;"
            + " 04:00:00..07:30:00/60 38>38",
        "not shown 361.00 min | 00:00:00..01:00:00/60 38>38; 01:01:00..04:00:00/60 45>45;"
            + " 04:01:00..07:30:00/60 38>38",
        "not met 363.00 min   | 00:00:00..01:00:00/60 38>38; 01:01:00..04:02:00/60 45>45;"
            + " 04:03:00..07:30:00/60 38>38",
        "not shown 420.00 min | 01:00:00 38; 03:00:00 45; 05:00:00 38; 07:30:00 38",
      })
  void warm_hours_of_the_drying_count_in_the_come_up(String said, String fridge) {
    Finding finding = dried(fridge).finding("us.a21.come-up");
    assertEquals(said, Bench.said(finding));
    assertEquals(
        !said.startsWith("met 300"),
        formulas(finding).contains("of drying above 41 °F beyond 2 h (common practice, no source)"),
        formulas(finding));
  }

  @Test
  void a_drying_without_readings_adds_nothing() {
    assertEquals("met 300.00 min", Bench.said(dried("").finding("us.a21.come-up")));
  }

  private static Bench dried(String fridge) {
    Bench bench =
        Bench.book()
            .product("class", "\"fully cooked, not shelf stable\"")
            .rule("us.a21.come-up")
            .write(
                "dry,00:00:00,into drying,F2",
                "dry,07:30:00,out of drying",
                "smoke,08:00:00,into smoke,SM",
                "smoke,14:30:00,out of smoke",
                "chill,14:35,into chill,F2",
                "chill,18:00,out of chill")
            .core("P1", "LG-0", "08:00:00 50.0; 08:01:00..12:59:00/60 51>129; 13:00:00 130.0");
    return fridge.isEmpty()
        ? bench
        : bench.log("AIR", "cooler temperature", "°F", "LG-0", "\"place\": \"F2\"", fridge);
  }

  @Test
  void a_span_prints_both_times_and_the_readings_on_both_sides() {
    Finding finding =
        cooled("LG-A", "11:00:00 131.0; 11:01:00..11:59:00/60 129>80.6; 12:00:00 79.0")
            .finding(COOLING);
    Part first = finding.parts().get(0);
    assertEquals("60 min", first.measured().orElseThrow().value().shown());
    assertTrue(first.measured().orElseThrow().interpolated().isPresent());
    assertEquals("P1", first.probe());
    assertTrue(finding.evidence().stream().anyMatch(place -> place.line() == 182));
  }
}
