package org.flitchbook.check;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Yields, peaks, laboratory figures and humidity. */
final class FiguresTest {

  private static final String YIELD = "us.319.107.yield";
  private static final String HUMIDITY = "us.a21.table-1.humidity";

  private static String verdict(Bench bench, String limit) {
    return bench.finding(limit).verdict().words();
  }

  private static Bench weighed(String... lines) {
    return Bench.book()
        .believed()
        .rule(YIELD)
        .write("cure,09:10,rind,,off", "cure,09:12,green weight,,4812,g", "cure,09:40,into cure,F1")
        .write(lines);
  }

  /** 9 CFR 319.107: bacon weighs no more than its green weight. */
  @ParameterizedTest
  @CsvSource({"4811, met", "4812, met", "4813, not met"})
  void bacon_weighs_no_more_than_it_did_green(String grams, String verdict) {
    Bench bench =
        weighed(
            "chill,12:00,into chill,F2",
            "chill,17:00,weight,," + grams + ",g",
            "chill,18:00,out of chill");
    assertEquals(verdict, verdict(bench, YIELD));
  }

  @Test
  void a_yield_before_the_last_step_is_pending_and_after_it_not_shown() {
    Bench bench = weighed("soak,10:00,into soak,SK", "soak,11:00,weight,,4900,g");
    assertEquals("pending", verdict(bench, YIELD));
    bench.write("chill,12:00,into chill,F2", "chill,18:00,out of chill");
    assertEquals("not shown", verdict(bench, YIELD));
  }

  /** The house's 145 °F, with U = 0.5 °F. */
  @ParameterizedTest
  @CsvSource({"145.5, met", "145.4, not shown", "145.0, not shown", "144.9, not met"})
  void a_peak_is_judged_with_its_uncertainty_taken_off(String level, String verdict) {
    Bench bench =
        Bench.book()
            .own(
                "finish",
                "smoke",
                "\"kind\": \"floor\", \"quantity\": \"peak internal temperature\", \"atLeast\":"
                    + " \"145 °F\"")
            .write(
                "smoke,08:00,into smoke,SM",
                "smoke,10:00,out of smoke",
                "chill,10:05,into chill,F2")
            .core(
                "P1",
                "LG-A",
                "08:00:00..08:59:00/60 40>140; 09:00:00 "
                    + level
                    + "; 09:01:00..10:00:00/60 140>120");
    assertEquals(verdict, verdict(bench, "finish"));
  }

  private static final String COLD_SMOKED =
      "\"kind\": \"ceiling\", \"quantity\": \"peak internal temperature\", \"atMost\": \"86 °F\"";

  /** A cold smoke that stays below 86 °F, with U = 0.5 °F; common practice, no source. */
  @ParameterizedTest
  @CsvSource({
    "85.5, 12:00, met, 'P1 at 09:00: 85.5 °F + 0.5 °F = 86 °F', ''",
    "85.6, 12:00, not shown, 'P1 at 09:00: 85.6 °F + 0.5 °F = 86.1 °F', 'P1 peaks at 85.6 °F; with the instrument''s error against the lot it is above 86 °F'",
    "86.1, 12:00, not met, 'P1 at 09:00: 86.1 °F + 0.5 °F = 86.6 °F', 'P1 peaks at 86.1 °F, above 86 °F'",
    "86.1, 09:30, not met, 'P1 at 09:00: 86.1 °F + 0.5 °F = 86.6 °F', 'P1 peaks at 86.1 °F, above 86 °F'",
    "85.6, 09:30, not shown, 'P1 at 09:00: 85.6 °F + 0.5 °F = 86.1 °F', 'P1 peaks at 85.6 °F; with the instrument''s error against the lot it is above 86 °F'",
  })
  void a_peak_may_be_held_down_too(
      String level, String at, String verdict, String formula, String reason) {
    Bench bench =
        Bench.book()
            .own("cold", "smoke", COLD_SMOKED)
            .write("smoke,08:00:00,into smoke,SM", "smoke,10:00:00,out of smoke")
            .core(
                "P1",
                "LG-A",
                "08:00:00..08:59:00/60 40>80; 09:00:00 " + level + "; 09:01:00..10:00:00/60 80>70");
    Finding finding = Bench.found(bench.judge(at), "cold");
    assertEquals(verdict, finding.verdict().words());
    assertEquals(formula, finding.formula());
    assertEquals(reason, finding.reason());
  }

  /** One hand reading beside a live log may count against the lot, never for it. */
  @ParameterizedTest
  @CsvSource({"86.1, not met", "85.9, met"})
  void a_hand_reading_beside_the_log_counts_against_a_ceiling(String level, String verdict) {
    Bench bench =
        Bench.book()
            .own("cold", "smoke", COLD_SMOKED)
            .write(
                "smoke,08:00:00,into smoke,SM",
                "smoke,09:10,internal temperature,," + level + ",°F",
                "smoke,10:00:00,out of smoke")
            .core("P1", "LG-0", "08:00:00..10:00:00/60 40>80");
    assertEquals(verdict, verdict(bench, "cold"));
  }

  @ParameterizedTest
  @CsvSource({
    // 9 CFR 424.21(c): 200 ppm in the finished product, not for bacon
    "us.424.21-c.residual-nitrite, residual nitrite, 200, ppm, met",
    "us.424.21-c.residual-nitrite, residual nitrite, 200.1, ppm, not met",
    "us.424.21-c.residual-nitrite, residual nitrite, 199.9, ppm, met",
    // 9 CFR 319.106(c): at least 4 % salt
    "us.319.106-c.salt, salt, 4.0, %, met",
    "us.319.106-c.salt, salt, 3.9, %, not met",
    "us.319.106-c.salt, salt, 4.1, %, met",
  })
  void laboratory_figures_are_compared(
      String limit, String what, String value, String unit, String verdict) {
    Bench bench = Bench.book().product("cut", "\"ham\"").rule(limit);
    assertEquals("pending", verdict(bench, limit));
    bench.write("dispatch,10:00,dispatched,Corner shop");
    assertEquals("not shown", verdict(bench, limit));
    bench.write("lab,09:00," + what + ",," + value + "," + unit);
    assertEquals(verdict, verdict(bench, limit));
  }

  /** Salt ÷ (salt + moisture): FSIS, Principles of Preservation, 2005, p. 160. */
  @ParameterizedTest
  @CsvSource({"10, 90, met", "9.9, 90, not met", "10.1, 90, met"})
  void brine_strength_comes_from_both_figures(String salt, String moisture, String verdict) {
    Bench bench =
        Bench.book()
            .own(
                "brine",
                "release",
                "\"kind\": \"floor\", \"quantity\": \"brine strength\", \"atLeast\": \"10 %\"")
            .write("dispatch,10:00,dispatched,Corner shop", "lab,09:00,salt,," + salt + ",%");
    assertEquals("not shown", verdict(bench, "brine"));
    assertEquals(verdict, verdict(bench.write("lab,09:01,moisture,," + moisture + ",%"), "brine"));
  }

  private static Bench cooked(String out, String... lines) {
    return Bench.book()
        .product("cut", "\"loin\"")
        .product("class", "\"fully cooked, not shelf stable\"")
        .rule(HUMIDITY)
        .write(
            "smoke,08:00:00,into smoke,SM",
            "smoke," + out + ",out of smoke",
            "chill,13:00,into chill,F2")
        .write(lines);
  }

  private static Bench hot(Bench bench, String peak) {
    return bench.core(
        "P1", "LG-0", "08:00:00..10:00:00/60 40>" + peak + "; 10:01:00..13:00:00/60 140>60");
  }

  /** FSIS-GD-2021-14, Table 1, options 1 and 2: half the time and an hour, to 145 °F or more. */
  @ParameterizedTest
  @CsvSource({
    "steam, 10:00:00, 09:00:00, 145.0, met",
    "steam, 10:00:00, 08:59:59, 145.0, not met",
    "steam, 10:00:00, 09:00:00, 144.9, not met",
    "oven sealed, 12:00:00, 10:00:00, 145.0, met",
    "oven sealed, 12:00:00, 09:59:59, 145.0, not met",
  })
  void steam_or_a_sealed_oven_for_half_the_time(
      String what, String out, String off, String peak, String verdict) {
    Bench bench =
        cooked(out, "smoke,08:00:00," + what + ",,on", "smoke," + off + "," + what + ",,off");
    assertEquals(verdict, verdict(hot(bench, peak), HUMIDITY));
  }

  /** Options 3 and 4: 90 % for a quarter of the time and an hour, or all through; U = 2 %. */
  @ParameterizedTest
  @CsvSource({
    "12:00:00, 08:00:00..09:00:00/60 92, met",
    "12:00:00, 08:00:00..08:59:00/60 92, not met",
    "12:00:00, 08:00:00..09:00:00/60 91.9, not shown",
    "12:00:00, 08:00:00..09:00:00/60 89.9, not met",
    "08:30:00, 08:00:00..08:30:00/60 92, met",
    "08:30:00, 08:00:00..08:29:00/60 92, not met",
    "12:00:00, 08:00:00..08:30:00/60 92; 08:36:00..09:06:00/60 92, met",
    "12:00:00, 08:00:00..08:30:00/60 92; 08:36:00..09:05:00/60 92, not met",
    // a log written to the minute may have begun a minute later, once for each run
    "12:00:00, 08:00..09:01/60 92, met",
    "12:00:00, 08:00..09:00/60 92, not shown",
    "12:00:00, 08:00..08:59/60 92, not met",
    "12:00:00, 08:00..08:31/60 92; 08:37..09:08/60 92, met",
    "12:00:00, 08:00..08:31/60 92; 08:37..09:07/60 92, not shown",
    "12:00:00, 08:00..08:30/60 92; 08:31 91; 08:32..09:03/60 92, not shown",
  })
  void humid_air_for_a_quarter_of_the_time_or_all_of_it(String out, String air, String verdict) {
    Bench bench =
        cooked(out).log("RH", "humidity", "%", "LG-H", "\"place\": \"SM\"", air + end(air));
    assertEquals(verdict, verdict(bench, HUMIDITY));
  }

  private static String end(String air) {
    return air.startsWith("08:00..") ? "; 12:30 50" : "; 12:30:00 50";
  }

  /** Steam that ran before the product was in, or ran on after it was out, did nothing for it. */
  @ParameterizedTest(name = "{1}: {0}")
  @CsvSource(
      delimiter = '|',
      value = {
        "met       | 07:00:00 on 09:00:00 off",
        "not met   | 07:00:00 on 08:59:59 off",
        "met       | 09:00:00 on",
        "not met   | 09:00:01 on",
        "met       | 09:00:00 on 10:30:00 off",
        "not met   | 09:00:01 on 10:30:00 off",
        "met       | 08:00:00 on 08:30:00 off 09:00:00 on 09:30:00 off",
        "not met   | 08:00:00 on 08:30:00 off 09:00:00 on 09:29:59 off",
        "met       | 08:00:00 on 08:20:00 on 09:00:00 off",
        "not met   | 08:00:00 off 09:00:00 off",
        "met       | 08:00 on 09:01 off",
        "not shown | 08:00 on 09:00 off",
      })
  void steam_counts_while_the_product_is_in_the_smoke(String verdict, String switched) {
    Bench bench = cooked("10:00:00");
    String[] words = switched.split(" ", -1);
    for (int i = 0; i < words.length; i += 2) {
      bench.write("smoke," + words[i] + ",steam,," + words[i + 1]);
    }
    assertEquals(verdict, verdict(hot(bench, "145.0"), HUMIDITY));
  }

  @Test
  void a_share_tells_its_clock_times() {
    Bench bench = cooked("10:00:00", "smoke,08:10:00,steam,,on", "smoke,09:20:00,steam,,off");
    assertEquals(
        "option 1: 70 min between 08:10 and 09:20 of 120 min in the smoke, from 08:00 to 10:00;"
            + " wanted 60 min",
        hot(bench, "145.0").finding(HUMIDITY).formula());
  }

  @Test
  void an_option_that_is_missed_says_what_it_lacks() {
    String steam = "smoke,08:00:00,steam,,on";
    assertEquals(
        "option 1: the cooking time is below 1 h",
        hot(cooked("08:59:59", steam), "145.0").finding(HUMIDITY).reason());
    assertEquals(
        "option 1: not every probe surely reached 145 °F",
        hot(cooked("10:00:00", steam), "144.9").finding(HUMIDITY).reason());
    assertEquals(
        "option 1: 59 min of at least 60 min",
        hot(cooked("10:00:00", "smoke,09:01:00,steam,,on"), "145.0").finding(HUMIDITY).reason());
    assertEquals(
        "option 1: 89 min of at least 90 min",
        hot(cooked("11:00:00", "smoke,09:31:00,steam,,on"), "145.0").finding(HUMIDITY).reason());
  }

  @Test
  void humid_air_points_to_its_first_and_last_reading_or_to_the_highest() {
    String air =
        "08:00:00 91; 08:01:00..08:30:00/60 92; 08:31:00 91; 08:32:00..09:10:00/60 93; 09:11:00 40";
    Bench humid = cooked("12:00:00").log("RH", "humidity", "%", "LG-H", "\"place\": \"SM\"", air);
    assertEquals(
        "[2026-02-24/rh-log.csv:3:RH, 2026-02-24/rh-log.csv:72:RH]",
        humid.finding(HUMIDITY).evidence().toString());
    Bench dry =
        cooked("12:00:00")
            .log(
                "RH",
                "humidity",
                "%",
                "LG-H",
                "\"place\": \"SM\"",
                "08:00:00 40; 08:01:00 80; 08:02:00 80");
    assertEquals("[2026-02-24/rh-log.csv:3:RH]", dry.finding(HUMIDITY).evidence().toString());
  }

  @Test
  void without_humidity_on_record_nothing_is_shown() {
    assertEquals("not shown", verdict(cooked("10:00:00"), HUMIDITY));
  }
}
