package org.flitchbook.check;

import static org.flitchbook.check.Said.formulas;
import static org.flitchbook.check.Said.reasons;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Temperatures that are held through a step; 41 °F is Food Code 3-501.16. */
final class HoldingTest {

  private static final String LIMIT = "us-retail.fc22.3-501.16.cold-soak";

  private static Bench soaked(String... waters) {
    Bench bench =
        Bench.book()
            .rule(LIMIT)
            .write(
                "soak,09:00:00,into soak,SK",
                "soak,11:00:00,out of soak",
                "dry,11:05,into drying,F2");
    for (String water : waters) {
      String[] pair = water.split("=", -1);
      bench.write("soak," + pair[0] + ",water temperature,," + pair[1]);
    }
    return bench;
  }

  private static String verdict(Bench bench) {
    return bench.finding(LIMIT).verdict().words();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "met | 10:00:00=41.0,°F",
        "met | 10:00:00=5.0,°C",
        "not met | 10:00:00=41.1,°F",
        "not met | 10:00:00=5.01,°C",
        "met | 10:00:00=40.0,°F,MA,HT-1",
        "not shown | 10:00:00=40.1,°F,MA,HT-1",
        "not met | 10:00:00=41.1,°F,MA,HT-1",
        "not shown | 09:59:59=40.0,°F",
        "not shown | 10:00:01=40.0,°F",
        "not met | 10:30:00=42.0,°F",
      })
  void water_is_read_every_hour_and_never_above_the_limit(String verdict, String water) {
    assertEquals(verdict, verdict(soaked(water)));
  }

  @Test
  void without_a_reading_nothing_is_shown() {
    Finding finding = soaked().finding(LIMIT);
    assertEquals("not shown", finding.verdict().words());
    assertTrue(reasons(finding).contains("no water temperature of SK for 2 h"), reasons(finding));
  }

  @Test
  void a_lot_without_soak_entries_is_not_shown() {
    Bench bench =
        Bench.book()
            .rule(LIMIT)
            .write("cure,08:00,into cure,F1", "cure,08:30,out of cure", "dry,11:05,into drying,F2");
    Finding finding = bench.finding(LIMIT);
    assertEquals("not shown", finding.verdict().words());
    assertTrue(reasons(finding).startsWith("no \"into soak\" entry"), reasons(finding));
  }

  @ParameterizedTest
  @CsvSource({"10:30, 40.0, pending", "10:30, 41.1, not met", "11:30, 40.0, not shown"})
  void while_the_step_runs_it_is_pending_until_it_is_broken(String at, String level, String said) {
    Bench bench =
        Bench.book()
            .rule(LIMIT)
            .write(
                "soak,09:00:00,into soak,SK", "soak,10:00:00,water temperature,," + level + ",°F");
    assertEquals(said, Bench.found(bench.judge(at), LIMIT).verdict().words());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        // of 30 min allowed
        "met     | 09:30:00=40,°F 09:45:00=42,°F 10:00:00=40,°F 11:00:00=40,°F",
        "not met | 09:30:00=40,°F 09:45:00=42,°F 10:00:01=40,°F 11:00:00=40,°F",
        "not met | 09:10:00=40,°F 09:20:00=42,°F 09:30:00=40,°F 10:00:00=40,°F 10:05:00=42,°F"
            + " 10:10:01=40,°F",
        "met     | 09:10:00=40,°F 09:20:00=42,°F 09:30:00=40,°F 10:00:00=40,°F 10:05:00=42,°F"
            + " 10:10:00=40,°F",
        "not shown | 09:30:00=40,°F 09:45:00=42,°F 10:00=40,°F 11:00:00=40,°F",
      })
  void excursions_add_up_from_good_reading_to_good_reading(String verdict, String waters) {
    Bench bench =
        soaked(waters.split(" (?=\\d)", -1))
            .own(
                "allow",
                "soak",
                "\"kind\": \"holding\", \"what\": \"water temperature\", \"atMost\": \"41 °F\","
                    + " \"every\": \"2 h\", \"allow\": \"30 min\"");
    assertEquals(verdict, bench.finding("allow").verdict().words());
  }

  @Test
  void a_places_log_and_a_hand_reading_of_the_place_both_count() {
    String limit = "us-retail.fc22.3-501.16.cold-dry";
    Bench bench =
        Bench.book()
            .rule(limit)
            .write("dry,09:00:00,into drying,F2", "dry,15:00:00,out of drying")
            .log(
                "Air",
                "cooler temperature",
                "°F",
                "LG-0",
                "\"place\": \"F2\"",
                "09:00:00..15:00:00/600 40");
    assertEquals("met", bench.finding(limit).verdict().words());
    bench.write("dry,12:05,cooler temperature,F2,41.5,°F");
    assertEquals("not met", bench.finding(limit).verdict().words());
  }

  /** Good at 10:00 for the last time, out of it at 10:30, of 30 min allowed. */
  @ParameterizedTest
  @CsvSource({"10:30:00, met", "10:30, not shown", "10:29, met", "10:30:01, not met"})
  void an_excursion_to_the_end_of_its_step_lasts_to_the_worse_end_of_that_minute(
      String out, String verdict) {
    Bench bench =
        Bench.book()
            .own(
                "allow",
                "soak",
                "\"kind\": \"holding\", \"what\": \"water temperature\", \"atMost\": \"41 °F\","
                    + " \"every\": \"2 h\", \"allow\": \"30 min\"")
            .write(
                "soak,09:00:00,into soak,SK",
                "soak,10:00:00,water temperature,,40.0,°F",
                "soak,10:10:00,water temperature,,42.0,°F",
                "soak," + out + ",out of soak",
                "dry,11:05,into drying,F2");
    assertEquals(verdict, bench.finding("allow").verdict().words());
  }

  @ParameterizedTest
  @CsvSource({"F2, met", "F1, not shown"})
  void pieces_in_two_rooms_need_readings_of_both(String second, String said) {
    Bench bench =
        Bench.book()
            .own(
                "cold",
                "cure",
                "\"kind\": \"holding\", \"what\": \"cooler temperature\", \"atMost\": \"41 °F\","
                    + " \"every\": \"2 h\"")
            .write(
                "cure,08:00:00,into cure,F1,,,,,,,1",
                "cure,08:00:00,into cure,F2,,,,,,,2",
                "cure,09:00:00,cooler temperature,F1,38.0,°F",
                "cure,09:30:00,cooler temperature," + second + ",38.0,°F",
                "cure,11:00:00,out of cure",
                "dry,11:05,into drying,F2");
    assertEquals(said, bench.finding("cold").verdict().words());
  }

  /** Where it was worst, and from which good reading to which it was outside. */
  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = '|',
      value = {
        "42 °F; outside for 0.5 h from good reading to good reading (2026-02-24 09:30 to 2026-02-24"
            + " 10:00) | 09:30:00=40,°F 09:45:00=42,°F 10:00:00=40,°F",
        "43 °F; outside for 1 h from good reading to good reading (2 times, the longest 2026-02-24"
            + " 10:00 to 2026-02-24 10:40)"
            + " | 09:10:00=40,°F 09:20:00=42,°F 09:30:00=40,°F 10:00:00=40,°F 10:20:00=43,°F"
            + " 10:40:00=40,°F",
        "42.5 °F; outside for 0.75 h from good reading to good reading (2026-02-24 09:30 to"
            + " 2026-02-24 10:15) | 09:30:00=39,°F,MA,HT-1 09:45:00=40.5,°F,MA,HT-1"
            + " 10:00:00=42.5,°F,MA,HT-1 10:15:00=39,°F,MA,HT-1",
        "42 °F; outside for 2 h from good reading to good reading (2026-02-24 09:00 to 2026-02-24"
            + " 11:00) | 10:00:00=42,°F",
        "40.5 °F is inside only as written, not with the instrument's error against it"
            + " | 10:00:00=40.5,°F,MA,HT-1",
      })
  void a_level_that_was_not_held_says_when(String reason, String waters) {
    assertEquals(reason, reasons(soaked(waters.split(" (?=\\d)", -1)).finding(LIMIT)));
  }

  @ParameterizedTest
  @ValueSource(strings = {"38", "39"})
  void a_level_that_was_held_says_where_it_was_worst_first(String later) {
    Finding finding =
        soaked("10:00:00=39,°F,MA,HT-1", "10:30:00=" + later + ",°F,MA,HT-1").finding(LIMIT);
    assertEquals("hand at 2026-02-24 10:00: 39 °F + 1 °F = 40 °F", formulas(finding));
    assertEquals("1 °F", finding.measured().orElseThrow().margin().shown());
  }

  /** Allowed for 30 min: a time to the minute is its beginning as written, its end to be sure. */
  @ParameterizedTest
  @CsvSource({"10:29, met", "10:30, not shown", "10:30:00, met", "10:31, not met"})
  void an_excursion_ends_at_the_worse_end_of_a_minute(String good, String verdict) {
    String cool =
        "\"kind\": \"holding\", \"what\": \"water temperature\", \"atMost\": \"41 °F\","
            + " \"every\": \"2 h\", \"allow\": \"30 min\"";
    Bench bench =
        soaked("10:00:00=40,°F", "10:10:00=42,°F", good + "=40,°F").own("cool", "soak", cool);
    assertEquals(verdict, bench.finding("cool").verdict().words());
  }

  /** An air that must not dry out: the lowest reading is the worst. */
  @ParameterizedTest
  @CsvSource({"72, met, 72 %", "71.9, not shown, 71.9 %", "69.9, not met, 69.9 %"})
  void a_level_may_be_held_from_below_too(String lowest, String verdict, String value) {
    Bench bench =
        Bench.book()
            .own(
                "moist",
                "dry",
                "\"kind\": \"holding\", \"what\": \"humidity\", \"atLeast\": \"70 %\", \"every\":"
                    + " \"2 h\"")
            .write(
                "dry,09:00:00,into drying,F2",
                "dry,09:30:00,humidity,F2,80,%,MA,LG-H",
                "dry,10:00:00,humidity,F2," + lowest + ",%,MA,LG-H",
                "dry,10:30:00,humidity,F2,85,%,MA,LG-H",
                "dry,11:00:00,out of drying");
    Finding finding = bench.finding("moist");
    assertEquals(verdict, finding.verdict().words());
    assertEquals(value, finding.measured().orElseThrow().value().shown());
  }

  /** Read once an hour at least; the gap is told from the reading before it. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "10:00:00=40,°F | ''",
        "09:50:00=40,°F | no water temperature of SK for 1.17 h from 2026-02-24 09:50; it is wanted"
            + " every 1 h",
        "10:00=40,°F | no water temperature of SK for 1.02 h from 2026-02-24 09:00; it is wanted"
            + " every 1 h",
      })
  void a_silence_is_told_from_the_last_reading(String water, String reason) {
    assertEquals(reason, reasons(soaked(water).finding(LIMIT)));
  }
}
