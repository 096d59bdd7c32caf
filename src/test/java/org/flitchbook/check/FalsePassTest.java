package org.flitchbook.check;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What must not make a lot look better than its log says. */
final class FalsePassTest {

  private static final String COOLING = "us.b99.cooling-1";
  private static final String TABLE = "us.a21.table-2.lethality-6.5";
  private static final String HAND = ",internal temperature,thickest,";
  private static final String FINISH =
      "\"kind\": \"floor\", \"quantity\": \"peak internal temperature\", \"atLeast\": \"145 °F\"";

  private static Bench smoked() {
    return Bench.book()
        .write(
            "smoke,08:00:00,into smoke,SM",
            "smoke,11:00:00,out of smoke",
            "chill,11:05:00,into chill,F2",
            "chill,18:00:00,out of chill");
  }

  private static String verdict(Bench bench, String limit) {
    return bench.finding(limit).verdict().words();
  }

  /** A hand reading in the one piece says nothing of the other, whose probe was read all along. */
  @Test
  void a_hot_hand_reading_does_not_lift_a_live_probes_peak() {
    Bench bench =
        smoked()
            .own("finish", "smoke", FINISH)
            .core("P1", "LG-0", "08:00:00..10:59:00/60 45>150; 11:00:00..17:00:00/60 149>35")
            .core("P2", "LG-0", "08:00:00..10:59:00/60 45>120; 11:00:00..17:00:00/60 119>35")
            .write("smoke,10:58" + HAND + "150.4,°F");
    assertEquals("not met 120.00 °F", Bench.said(bench.finding("finish")));
  }

  @ParameterizedTest
  @CsvSource({
    "09:00:00..09:10:00/60 144.0, not met",
    "09:00:00 144.0; 09:10:00 144.0, met",
  })
  void a_hand_reading_counts_for_the_peak_where_the_log_is_silent(String log, String verdict) {
    Bench bench =
        smoked()
            .own("finish", "smoke", FINISH)
            .core(
                "P1",
                "LG-0",
                "08:00:00..08:59:00/60 45>140; " + log + "; 09:11:00..12:00:00/60 140>40")
            .write("smoke,09:05" + HAND + "145.0,°F");
    assertEquals(verdict, verdict(bench, "finish"));
  }

  /** The log never reaches 130 °F and is slow from its peak on; the hand reading came late. */
  @Test
  void a_hot_hand_reading_does_not_restart_the_clock_of_a_live_probe() {
    Bench bench =
        smoked()
            .rule(COOLING)
            .core(
                "P1",
                "LG-0",
                "08:00:00..09:59:00/60 45>129; 10:00:00..11:30:00/60 128; 11:31:00..12:20:00/60"
                    + " 127>79; 12:21:00..15:00:00/60 78>35")
            .write("chill,11:30" + HAND + "131.0,°F");
    assertEquals("not met", bench.finding(COOLING).parts().get(0).verdict().words());
  }

  /** The core had been in the band for 60 minutes when the log fell silent for 10. */
  @Test
  void a_mistyped_hand_reading_in_a_gap_does_not_restart_the_clock() {
    Bench bench =
        smoked()
            .rule(COOLING)
            .core(
                "P1",
                "LG-0",
                "08:00:00..10:59:00/60 45>150; 11:00:00..12:00:00/60 130>100; 12:10:00..12:40:00/60"
                    + " 95>79; 12:41:00..15:00:00/60 78>35")
            .write("chill,12:05" + HAND + "159.0,°F");
    assertEquals("not met", bench.finding(COOLING).parts().get(0).verdict().words());
  }

  @Test
  void a_hot_hand_reading_does_not_end_the_come_up_of_a_live_probe() {
    Bench bench =
        smoked()
            .own(
                "come-up",
                "smoke",
                "\"kind\": \"span\", \"what\": \"internal temperature\", \"from\": \"50 °F\","
                    + " \"to\": \"130 °F\", \"atMost\": \"1 h\"")
            .core(
                "P1",
                "LG-0",
                "08:00:00 50; 08:01:00..10:00:00/60 51>130; 10:01:00..15:00:00/60 129>35")
            .write("smoke,08:50" + HAND + "131.0,°F");
    assertEquals("not met", verdict(bench, "come-up"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "not met | 09:00:00..09:10:00/60 140.0",
        "met     | 09:00:00 140.0; 09:10:00 140.0",
      })
  void hand_checks_serve_only_where_the_log_is_silent(String verdict, String log) {
    Bench bench =
        smoked()
            .rule(TABLE)
            .core(
                "P1",
                "LG-0",
                "08:00:00..08:59:00/60 45>110; " + log + "; 09:11:00..12:00:00/60 110>40")
            .write("smoke,09:05" + HAND + "158.0,°F", "smoke,09:06" + HAND + "158.0,°F");
    assertEquals(verdict, verdict(bench, TABLE));
  }

  /** Hand readings beside a live log make no run of their own, nor lengthen the log's. */
  @Test
  void hand_readings_do_not_lengthen_the_run_of_a_live_probe() {
    Bench bench =
        smoked()
            .rule(TABLE)
            .core(
                "P1",
                "LG-0",
                "08:00:00..08:55:00/300 45>110; 09:00:00 145.0; 09:05:00 110;"
                    + " 09:10:00..12:00:00/300 110>40")
            .write("smoke,09:02" + HAND + "145.0,°F", "smoke,09:04:30" + HAND + "145.0,°F");
    assertEquals("not met", verdict(bench, TABLE));
  }

  @Test
  void a_probe_that_never_warmed_shows_no_come_up() {
    Bench bench =
        smoked()
            .own(
                "come-up",
                "smoke",
                "\"kind\": \"span\", \"what\": \"internal temperature\", \"from\": \"50 °F\","
                    + " \"to\": \"130 °F\", \"atMost\": \"6 h\"")
            .core("P1", "LG-0", "08:00:00..17:00:00/60 40");
    assertEquals("not shown", verdict(bench, "come-up"));
  }

  /** An excursion lasts from the last good reading to the next, or to the ends of the step. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        // of 2 h allowed, in a step from 06:00 to 18:00
        "met     | 08:00,38; 09:00,42; 10:00,38; 17:30,38",
        "not met | 06:30,38; 08:01,42; 10:01,42; 10:30,38; 17:30,38",
        "not met | 08:01,42; 09:00,38; 17:30,38",
        "met     | 07:59,42; 07:59:30,38; 17:30,38",
        "not met | 06:30,38; 15:59,38; 16:01,42",
      })
  void an_excursion_at_an_end_of_the_step_counts_to_that_end(String verdict, String readings) {
    Bench bench =
        Bench.book()
            .own(
                "cold",
                "cure",
                "\"kind\": \"holding\", \"what\": \"cooler temperature\", \"atMost\": \"41 °F\","
                    + " \"every\": \"16 h\", \"allow\": \"2 h\"")
            .write("cure,06:00:00,into cure,F1", "cure,18:00:00,out of cure");
    for (String reading : readings.split("; ", -1)) {
      String[] pair = reading.split(",", -1);
      String time = pair[0].length() == 5 ? pair[0] + ":00" : pair[0];
      bench.write("cure," + time + ",cooler temperature,F1," + pair[1] + ",°F");
    }
    assertEquals(verdict, verdict(bench, "cold"));
  }

  /** The second piece lay four days in the cure, not seven. */
  @Test
  void each_piece_has_its_own_time_in_the_cure() {
    Bench bench =
        Bench.book()
            .own(
                "days",
                "cure",
                "\"kind\": \"duration\", \"from\": \"into cure\", \"to\": \"out of cure\","
                    + " \"atLeast\": \"7 d\"")
            .write(
                "cure,2026-02-10 09:00:00,into cure,F1,,,MA,,,,a",
                "cure,2026-02-13 09:00:00,into cure,F1,,,MA,,,,b",
                "cure,2026-02-17 09:00:00,out of cure");
    assertEquals("not met 4.00 d", Bench.said(bench.finding("days")));
  }
}
