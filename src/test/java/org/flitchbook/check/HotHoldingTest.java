package org.flitchbook.check;

import static org.flitchbook.check.Said.reasons;
import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What is kept hot after its last step until it leaves: 135 °F, and 130 °F for a roast cooked by
 * the roast table (Food Code 3-501.16); 140 °F is remembered of FSIS-GD-2021-13.
 */
final class HotHoldingTest {

  private static final String HOT = "us-retail.fc22.3-501.16.hot";

  /** Out of the smoke at 11:00, sold at 13:00. */
  private static Bench smoked(String limit) {
    return Bench.book()
        .product("cut", "\"ham\"")
        .product("steps", "[\"cure\", \"smoke\"]")
        .rule(limit)
        .write("smoke,08:00:00,into smoke,SM", "smoke,11:00:00,out of smoke");
  }

  private static Bench sold(String limit, String... readings) {
    Bench bench = smoked(limit).write("dispatch,13:00:00,dispatched,Corner shop");
    for (String reading : readings) {
      String[] pair = reading.split("=", -1);
      bench.write("dispatch," + pair[0] + ",internal temperature,thickest," + pair[1]);
    }
    return bench;
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "us-retail.fc22.3-501.16.hot       | 135.0,°F | met",
        "us-retail.fc22.3-501.16.hot       | 135.1,°F | met",
        "us-retail.fc22.3-501.16.hot       | 134.9,°F | not met",
        "us-retail.fc22.3-501.16.hot       | 57.22,°C | not met",
        "us-retail.fc22.3-501.16.hot       | 57.23,°C | met",
        "us-retail.fc22.3-501.16.hot-roast | 130.0,°F | met",
        "us-retail.fc22.3-501.16.hot-roast | 130.1,°F | met",
        "us-retail.fc22.3-501.16.hot-roast | 129.9,°F | not met",
      })
  void the_core_stays_at_or_above_the_limit(String limit, String core, String verdict) {
    assertEquals(verdict, sold(limit, "12:00:00=" + core).finding(limit).verdict().words());
  }

  @ParameterizedTest
  @CsvSource({"140.0, met", "139.9, not met", "140.1, met"})
  void a_remembered_limit_is_judged_with_the_plans_support(String core, String verdict) {
    String id = "us.b21.hot-holding";
    String entry = "{\"limit\": \"" + id + "\", \"support\": \"letter of the authority\"}";
    assertEquals(verdict, sold(entry, "12:00:00=" + core + ",°F").finding(id).verdict().words());
  }

  /** HT-1 is good to 1 °F. */
  @ParameterizedTest
  @CsvSource({"136.0, met", "135.9, not shown", "135.0, not shown", "134.9, not met"})
  void the_error_of_the_thermometer_counts_against_it(String core, String verdict) {
    Bench bench = sold(HOT, "12:00:00=" + core + ",°F,MA,HT-1");
    assertEquals(verdict, bench.finding(HOT).verdict().words());
  }

  @ParameterizedTest
  @CsvSource({
    "12:00:00, 14:00:00, met",
    "12:00:00, 14:00:01, not shown",
    "13:00:01, 14:00:00, not shown",
    "13:00:00, 15:00:00, met",
  })
  void it_is_read_every_two_hours_the_ends_included(String read, String gone, String verdict) {
    Bench bench =
        smoked(HOT)
            .write(
                "dispatch," + read + ",internal temperature,,140,°F",
                "dispatch," + gone + ",dispatched,Corner shop");
    assertEquals(verdict, bench.finding(HOT).verdict().words());
  }

  @Test
  void without_a_reading_it_is_not_shown() {
    Bench bench = smoked(HOT).write("dispatch,14:00:00,dispatched,Corner shop");
    Finding finding = bench.finding(HOT);
    assertEquals("not shown", finding.verdict().words());
    assertEquals(
        "no internal temperature for 3 h from 2026-02-24 11:00; it is wanted every 2 h",
        reasons(finding));
  }

  /** The log goes on after the smoke; what it read in the smoke is not held against the holding. */
  @ParameterizedTest
  @CsvSource({"135, met", "134, not met"})
  void a_log_that_goes_on_is_judged_from_the_end_of_the_smoke(String held, String verdict) {
    Bench bench =
        sold(HOT)
            .core(
                "P1",
                "LG-0",
                "08:00:00..10:59:00/60 40>150; 11:00:00..13:00:00/60 " + held + "; 13:01:00 60");
    assertEquals(verdict, bench.finding(HOT).verdict().words());
  }

  @Test
  void it_is_pending_until_the_lot_leaves() {
    assertEquals("pending", smoked(HOT).finding(HOT).verdict().words());
  }

  @Test
  void where_nobody_wrote_the_end_of_the_smoke_it_is_not_shown() {
    Bench bench =
        Bench.book()
            .product("steps", "[\"cure\", \"smoke\"]")
            .rule(HOT)
            .write("smoke,08:00:00,into smoke,SM", "dispatch,13:00:00,dispatched,Corner shop");
    Finding finding = bench.finding(HOT);
    assertEquals("not shown", finding.verdict().words());
    assertEquals("no entry says when the last step ended", reasons(finding));
  }

  /** Of the house: whoever keeps it hot signs every hour. */
  @ParameterizedTest
  @CsvSource({"12:00:00, met", "12:00:01, not met"})
  void a_cadence_runs_until_the_lot_leaves(String read, String verdict) {
    Bench bench =
        sold(HOT, read + "=140,°F")
            .own(
                "watched",
                "release",
                "\"kind\": \"cadence\", \"what\": \"internal temperature\", \"every\": \"1 h\"");
    assertEquals(verdict, bench.finding("watched").verdict().words());
  }

  /** A shipment that may not leave above 40 °F, after the chill. */
  @ParameterizedTest
  @CsvSource({"40.0, met", "40.1, not met"})
  void a_core_at_dispatch_can_be_judged_too(String core, String verdict) {
    Bench bench =
        Bench.book()
            .own(
                "cold",
                "release",
                "\"kind\": \"holding\", \"what\": \"internal temperature\", \"atMost\": \"40 °F\","
                    + " \"every\": \"1 d\"")
            .write(
                "smoke,08:00:00,into smoke,SM",
                "smoke,11:00:00,out of smoke",
                "chill,11:10:00,into chill,F2",
                "chill,18:00:00,out of chill",
                "dispatch,19:00:00,internal temperature,," + core + ",°F",
                "dispatch,19:00:00,dispatched,Corner shop")
            .core("P1", "LG-0", "08:00:00..10:59:00/60 40>150; 11:00:00..18:00:00/60 140>39");
    assertEquals(verdict, bench.finding("cold").verdict().words());
  }
}
