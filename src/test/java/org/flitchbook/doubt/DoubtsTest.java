package org.flitchbook.doubt;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.flitchbook.check.Bench;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Severity;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What would make a bad lot look good, by its named rules. */
final class DoubtsTest {

  private static final String COOLING = "us.b99.cooling-1";
  private static final String RISE = "08:00:00..10:59:00/60 45>150; ";

  private static Bench smoked(Bench bench) {
    return bench
        .rule(COOLING)
        .write(
            "smoke,08:00:00,into smoke,SM",
            "smoke,11:00:00,out of smoke",
            "chill,11:05:00,into chill,F2",
            "chill,18:00:00,out of chill");
  }

  private static List<String> said(Bench bench) {
    return bench.doubts().stream().map(DoubtsTest::said).toList();
  }

  private static String said(Fault fault) {
    return fault.severity().word() + " " + fault.rule() + " " + fault.place();
  }

  @ParameterizedTest
  @CsvSource({"12:05:00, none", "12:05:01, note gap 2026-02-24/p1-log.csv:243:P1"})
  void a_gap_of_more_than_three_intervals_and_five_minutes_is_a_note(String next, String said) {
    Bench bench =
        smoked(Bench.book())
            .core(
                "P1",
                "LG-0",
                RISE + "11:00:00..12:00:00/60 130>80; " + next + "..17:00:00/60 79>35");
    assertEquals(said.equals("none") ? List.of() : List.of(said), said(bench));
  }

  @Test
  void a_gap_with_a_hand_reading_in_it_is_still_a_gap_of_the_log() {
    Bench bench =
        smoked(Bench.book())
            .core("P1", "LG-0", RISE + "11:00:00..12:00:00/60 130>80; 12:08:00..17:00:00/60 79>35")
            .write("chill,12:04,internal temperature,,79.5,°F");
    Fault gap = bench.doubts().get(0);
    assertTrue(gap.found().toString().endsWith("(8 min, 1 by hand in it)"), gap.found()::toString);
  }

  @ParameterizedTest
  @CsvSource({"63.0, false", "63.1, true", "62.9, false"})
  void a_core_that_warms_by_more_than_3_degrees_while_it_chills_must_be_explained(
      String level, boolean asked) {
    Bench bench =
        smoked(Bench.book())
            .core(
                "P1",
                "LG-0",
                RISE
                    + "11:00:00..12:00:00/60 130>80; 12:01:00..13:00:00/60 79>60; 13:01:00 "
                    + level
                    + "; 13:02:00..17:00:00/60 59>35");
    assertEquals(
        asked ? List.of("ask re-warming 2026-02-24/p1-log.csv:303:P1") : List.of(), said(bench));
  }

  @Test
  void warming_before_the_chill_is_no_doubt() {
    Bench bench =
        smoked(Bench.book())
            .core(
                "P1",
                "LG-0",
                "08:00:00..09:00:00/60 45>100; 09:01:00 90; 09:02:00..11:00:00/60 91>150;"
                    + " 11:06:00..17:00:00/60 130>35");
    assertEquals(List.of("note gap 2026-02-24/p1-log.csv:183:P1"), said(bench));
  }

  /** HT-1 is checked every 30 days. */
  @ParameterizedTest
  @CsvSource({
    "2026-01-25 09:00, 09:00, none",
    "2026-01-25 09:00, 09:01, ask",
    "2026-02-24 09:01, 09:00, ask",
  })
  void an_instrument_serves_up_to_the_last_moment_of_its_check(
      String check, String use, String said) {
    Bench bench =
        Bench.unchecked()
            .write(
                "cure,05:00,product,P",
                "instruments," + check + ",ice point,,32.0,°F,MA,HT-1",
                "cure," + use + ",received temperature,,38.0,°F,MA,HT-1");
    List<String> found =
        bench.doubts().stream()
            .filter(fault -> fault.rule().equals("instrument not in force"))
            .map(fault -> fault.severity().word())
            .toList();
    assertEquals(said.equals("none") ? List.of() : List.of(said), found);
  }

  @Test
  void an_instrument_that_was_never_checked_is_in_doubt() {
    Bench bench =
        Bench.unchecked()
            .write("cure,05:00,product,P", "cure,09:00,received temperature,,38.0,°F,MA,HT-1");
    assertTrue(bench.doubts().get(0).found().toString().contains("no check of it is on file"));
  }

  /** A log's last reading counts too: it may run past the day on which the check ran out. */
  @Test
  void a_log_that_outlasts_the_check_is_in_doubt() {
    Bench bench =
        Bench.unchecked()
            .write(
                "cure,05:00,product,P",
                "smoke,08:00:00,into smoke,SM",
                "instruments,2025-01-20 09:00,ice point,,32.0,°F,MA,LG-0")
            .core("P1", "LG-0", "08:00:00..10:00:00/60 45>140");
    assertEquals(List.of("ask instrument not in force 2026-02-24/p1-log.csv:2:P1"), said(bench));
  }

  @ParameterizedTest
  @CsvSource({"34.0, 0", "34.1, 1", "29.9, 1", "30.0, 0"})
  void a_failed_check_reopens_what_was_read_since_the_last_good_one(String ice, int faults) {
    Bench bench =
        Bench.book()
            .write(
                "cure,09:00,received temperature,,38.0,°F,MA,HT-1",
                "instruments,20:00,ice point,," + ice + ",°F,MA,HT-1");
    List<Fault> found = bench.doubts();
    assertEquals(faults, found.size());
    found.forEach(fault -> assertEquals(Severity.ASK, fault.severity()));
    found.forEach(fault -> assertEquals("instrument failed its check", fault.rule()));
  }

  @Test
  void a_good_check_between_clears_what_was_read_before_it() {
    Bench bench =
        Bench.book()
            .write(
                "cure,09:00,received temperature,,38.0,°F,MA,HT-1",
                "instruments,12:00,ice point,,32.0,°F,MA,HT-1",
                "instruments,20:00,ice point,,40.0,°F,MA,HT-1");
    assertEquals(List.of(), said(bench));
  }
}
