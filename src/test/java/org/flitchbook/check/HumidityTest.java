package org.flitchbook.check;

import static org.flitchbook.check.Said.formulas;
import static org.flitchbook.check.Said.reasons;
import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The four options of FSIS-GD-2021-14, Table 1, p. 26 (read). */
final class HumidityTest {

  private static final String HUMIDITY = "us.a21.table-1.humidity";

  private static String verdict(Bench bench, String limit) {
    return bench.finding(limit).verdict().words();
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
        formulas(hot(bench, "145.0").finding(HUMIDITY)));
  }

  @Test
  void an_option_that_is_missed_says_what_it_lacks() {
    String steam = "smoke,08:00:00,steam,,on";
    assertEquals(
        "option 1: the cooking time is below 1 h",
        reasons(hot(cooked("08:59:59", steam), "145.0").finding(HUMIDITY)));
    assertEquals(
        "option 1: not every probe surely reached 145 °F",
        reasons(hot(cooked("10:00:00", steam), "144.9").finding(HUMIDITY)));
    assertEquals(
        "option 1: 59 min of at least 60 min",
        reasons(hot(cooked("10:00:00", "smoke,09:01:00,steam,,on"), "145.0").finding(HUMIDITY)));
    assertEquals(
        "option 1: 89 min of at least 90 min",
        reasons(hot(cooked("11:00:00", "smoke,09:31:00,steam,,on"), "145.0").finding(HUMIDITY)));
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

  /** Half of 90 min are 45 min, and a quarter of 2 h is half an hour: the hour is longer. */
  @ParameterizedTest
  @CsvSource({
    "steam, 09:30:00, 09:00:00, met",
    "steam, 09:30:00, 08:59:59, not met",
    "oven sealed, 09:30:00, 08:59:59, not met",
    "humidity, 10:00:00, 09:00:00, met",
    "humidity, 10:00:00, 08:59:00, not met",
  })
  void an_hour_counts_where_it_is_longer_than_the_share(
      String what, String out, String until, String verdict) {
    Bench bench = cooked(out);
    if (what.equals("humidity")) {
      String air = "08:00:00.." + until + "/60 95; 12:30:00 50";
      bench.log("RH", "humidity", "%", "LG-H", "\"place\": \"SM\"", air);
    } else {
      bench.write("smoke,08:00:00," + what + ",,on", "smoke," + until + "," + what + ",,off");
      bench.core("P1", "LG-0", "08:00:00..09:20:00/60 40>150; 09:21:00..13:00:00/60 140>60");
    }
    assertEquals(verdict, verdict(bench, HUMIDITY));
  }
}
