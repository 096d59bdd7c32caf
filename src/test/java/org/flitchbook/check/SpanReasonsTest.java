package org.flitchbook.check;

import static org.flitchbook.check.Said.formulas;
import static org.flitchbook.check.Said.reasons;
import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What is said of a time in a band that is not met, and what it points to. */
final class SpanReasonsTest {

  private static final String COOLING = "us.b99.cooling-1";
  private static final String RISE = "08:00:00..10:59:00/60 45>150; ";
  private static final String COME_UP = "us.a21.come-up";

  private static Bench cooled(String instrument, String fall) {
    return Bench.book()
        .rule(COOLING)
        .write(
            "smoke,08:00:00,into smoke,SM",
            "smoke,11:00:00,out of smoke",
            "chill,11:05:00,into chill,F2",
            "chill,18:00:00,out of chill")
        .core("P1", instrument, RISE + fall);
  }

  /** The log is filed once it is pulled; what was read by hand meanwhile shows no beginning. */
  @ParameterizedTest(name = "{0}, {1}")
  @CsvSource(
      delimiter = '|',
      value = {
        "pending   | smoke,10:50,internal temperature,thickest,146,°F",
        "pending   | ",
        "not shown | smoke,10:50,internal temperature,thickest,146,°F ; chill,16:00,out of chill",
        "not shown | chill,16:00,out of chill",
      })
  void a_log_may_come_as_long_as_the_chill_runs(String verdict, String rows) {
    Bench bench =
        Bench.book()
            .own(
                "come-up",
                "smoke",
                "\"kind\": \"span\", \"what\": \"internal temperature\", \"from\": \"50 °F\","
                    + " \"to\": \"130 °F\", \"atMost\": \"6 h\"")
            .write(
                "smoke,08:00,into smoke,SM",
                "smoke,11:00,out of smoke",
                "chill,11:10,into chill,F2");
    if (rows != null) {
      bench.write(rows.split(" ; ", -1));
    }
    Judgement judged = bench.judge("2026-02-24 17:00");
    assertEquals(verdict, Bench.found(judged, "come-up").verdict().words());
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = '|',
      value = {
        // the first stage, 130 to 80 °F in 90 min, with U = 0.5 °F
        "P1: at least 117.9 min from 130 °F to 80 °F, of at most 1.5 h"
            + " | 11:00:00 131; 11:01:00..13:00:00/60 129.5>79.4; 13:30:00 40",
        "only the curve as written meets it (89.6 min); with the instrument's error against the lot"
            + " it does not | 11:00:00 130; 11:01:00..12:30:00/60 129>79.8; 12:31:00 79; 13:00:00"
            + " 40",
        "a crossing lies in a gap of the log: anything from 60 min to 110 min is possible"
            + " | 11:00:00 131; 11:01:00..12:01:00/60 129>90; 12:50:00 60; 13:00:00 40",
        "the readings of P1 end at 90 °F and never show 80 °F"
            + " | 11:00:00 131; 11:01:00..12:00:00/60 129>90",
        "the readings of P1 never fall below 130 °F | 11:00:00..12:00:00/60 150>131",
      })
  void a_stage_that_is_not_met_says_why(String reason, String fall) {
    assertEquals(reason, reasons(cooled("LG-A", fall).finding(COOLING).parts().get(0)));
  }

  /**
   * Taken 0.5 °F down it is below 80 °F at 12:00, taken up it never is: the latter counts, also
   * where the former began earlier.
   */
  @ParameterizedTest
  @ValueSource(strings = {"11:00:00 131", "10:58:00 130.2; 11:00:00 129.6"})
  void a_curve_that_leaves_the_band_on_one_side_of_its_error_only_is_not_shown(String top) {
    Part part =
        cooled("LG-A", top + "; 11:01:00..12:00:00/60 129>79.8").finding(COOLING).parts().get(0);
    assertEquals("not shown", part.verdict().words());
    assertEquals("60 min", part.measured().orElseThrow().value().shown());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "10:30:00 | P1 has not entered the band yet",
        "11:30:00 | still between 130 °F and 80 °F",
      })
  void while_it_runs_a_stage_says_where_it_is(String at, String reason) {
    Bench bench = cooled("LG-0", "11:00:00 130; 11:01:00..14:00:00/60 129>90");
    assertEquals(reason, reasons(Bench.found(bench.judge(at), COOLING).parts().get(0)));
  }

  @Test
  void a_stage_that_is_broken_while_it_runs_says_how_long_it_took_so_far() {
    Bench bench = cooled("LG-0", "11:00:00 130; 11:01:00..14:00:00/60 129>90");
    assertEquals(
        "P1: at least 91 min from 130 °F to 80 °F so far, of at most 1.5 h",
        reasons(Bench.found(bench.judge("12:32:00"), COOLING).parts().get(0)));
    Bench silent = cooled("LG-0", "11:00:00 130; 11:01:00..11:40:00/60 129>100");
    assertEquals(
        "its time has run out and no reading shows 80 °F",
        reasons(Bench.found(silent.judge("12:31:00"), COOLING).parts().get(0)));
  }

  /** The readings on both sides of each crossing, and the clock of both. */
  @Test
  void a_stage_points_to_the_readings_beside_its_crossings() {
    Finding finding =
        cooled(
                "LG-A",
                "11:00:00 131.0; 11:01:00 129; 11:30:00 100; 12:00:00 80.4; 12:01:00 79; 13:00:00"
                    + " 38")
            .finding(COOLING);
    assertEquals(
        "[2026-02-24/p1-log.csv:182:P1, 2026-02-24/p1-log.csv:183:P1, 2026-02-24/p1-log.csv:185:P1,"
            + " 2026-02-24/p1-log.csv:186:P1]",
        finding.evidence().subList(0, 4).toString());
    assertEquals(
        "P1 from 130 °F to 80 °F: from 11:00 (131 °F) to 12:01 (79 °F), ± 0.5 °F: 61 min",
        formulas(finding).split(";", 2)[0]);
  }

  private static Bench risen(String fridge, String core) {
    return Bench.book()
        .product("class", "\"fully cooked, not shelf stable\"")
        .rule(COME_UP)
        .write(
            "dry,00:00:00,into drying,F2",
            "dry,07:30:00,out of drying",
            "smoke,08:00:00,into smoke,SM",
            "smoke,14:30:00,out of smoke",
            "chill,14:35,into chill,F2",
            "chill,18:00,out of chill")
        .core("P1", "LG-0", core)
        .log("AIR", "cooler temperature", "°F", "LG-0", "\"place\": \"F2\"", fridge);
  }

  /** 5 h on the way up; the drying adds what it was warm beyond 2 h. */
  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = '|',
      value = {
        "the readings of the drying allow from 59 min to 61 min that count in it |"
            + " 00:00:00..01:00:00/60 38>38; 01:01:00..04:00:00/60 45>45; 04:01:00..07:30:00/60"
            + " 38>38",
        "P1: at least 361 min from 50 °F to 130 °F, with 63 min of drying above 41 °F beyond 2 h"
            + " (common practice, no source), of at most 6 h | 00:00:00..01:00:00/60 38>38;"
            + " 01:01:00..04:02:00/60 45>45; 04:03:00..07:30:00/60 38>38",
        "the readings of the drying allow from 59 min to 61 min that count in it |"
            + " 00:00:00..01:00:00/60 41>41; 01:01:00..04:00:00/60 45>45; 04:01:00..07:30:00/60"
            + " 41>41",
        "the readings of the drying allow from 60 min to 270 min that count in it"
            + " | 01:00:00 38; 02:00:00 45; 03:00:00 45; 05:00:00 45; 07:30:00 38",
        "the readings of the drying allow from 0 min to 120 min that count in it"
            + " | 01:00:00 38; 03:00:00 45; 05:00:00 38; 07:30:00 38",
      })
  void warm_hours_that_are_open_are_named(String reason, String fridge) {
    String core = "08:00:00 50.0; 08:01:00..12:59:00/60 51>129; 13:00:00 130.0";
    assertEquals(reason, reasons(risen(fridge, core).finding(COME_UP).parts().get(0)));
  }

  /** An hour of the six is spent before the smoke begins. */
  @ParameterizedTest
  @CsvSource({"13:00:00, pending", "13:00:01, not shown"})
  void warm_hours_shorten_the_time_that_is_left(String at, String verdict) {
    String warm =
        "00:00:00..01:00:00/60 38>38; 01:01:00..03:59:00/60 45>45; 04:00:00..07:30:00/60 38>38";
    Bench bench =
        Bench.book()
            .product("class", "\"fully cooked, not shelf stable\"")
            .rule(COME_UP)
            .write(
                "dry,00:00:00,into drying,F2",
                "dry,07:30:00,out of drying",
                "smoke,08:00:00,into smoke,SM")
            .core("P1", "LG-0", "08:00:00 50.0; 08:01:00..10:00:00/60 51>90")
            .log("AIR", "cooler temperature", "°F", "LG-0", "\"place\": \"F2\"", warm);
    assertEquals(verdict, Bench.found(bench.judge(at), COME_UP).parts().get(0).verdict().words());
  }

  @Test
  void a_core_that_never_warmed_is_not_shown_to_have_come_up() {
    Finding finding =
        risen("00:00:00..07:30:00/600 38", "08:00:00..15:00:00/60 40>49").finding(COME_UP);
    assertEquals("the readings of P1 never rise above 50 °F", reasons(finding.parts().get(0)));
    Finding inside =
        risen("00:00:00..07:30:00/600 38", "08:00:00..15:00:00/60 60>120").finding(COME_UP);
    assertEquals(
        "the readings of P1 begin at 60 °F, inside the band, and no reading by hand shows its"
            + " beginning",
        reasons(inside.parts().get(0)));
    assertEquals(2, inside.evidence().size());
  }

  /** A reading of the drying in doubt is one that the come-up rests on. */
  @Test
  void a_come_up_rests_on_the_drying_too() {
    Bench bench =
        risen(
            "00:00:00..07:30:00/600 38",
            "08:00:00 50.0; 08:01:00..12:59:00/60 51>129; 13:00:00 130.0");
    assertEquals("met", bench.finding(COME_UP).verdict().words());
    Bench unchecked =
        Bench.book()
            .product("class", "\"fully cooked, not shelf stable\"")
            .rule(COME_UP)
            .write(
                "dry,00:00:00,into drying,F2",
                "dry,07:30:00,out of drying",
                "smoke,08:00:00,into smoke,SM",
                "smoke,14:30:00,out of smoke",
                "instruments,2026-02-25 06:00,ice point,,40.0,°F,MA,LG-A")
            .core("P1", "LG-0", "08:00:00 50.0; 08:01:00..12:59:00/60 51>129; 13:00:00 130.0")
            .log(
                "AIR",
                "cooler temperature",
                "°F",
                "LG-A",
                "\"place\": \"F2\"",
                "00:00:00..07:30:00/600 38");
    assertEquals("not shown", unchecked.finding(COME_UP).verdict().words());
  }
}
