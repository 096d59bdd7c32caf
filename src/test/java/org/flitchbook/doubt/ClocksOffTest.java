package org.flitchbook.doubt;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.stream.Collectors;
import org.flitchbook.check.Bench;
import org.flitchbook.check.CoreLog;
import org.flitchbook.input.Fault;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The clock of a log against what was written by hand: into smoke at 08:00, out of it at 11:00. */
final class ClocksOffTest {

  private static String found(Bench bench) {
    return bench.doubts().stream()
        .filter(fault -> fault.rule().contains("clock") || fault.rule().contains("time"))
        .map(fault -> fault.severity().word() + " " + fault.rule())
        .collect(Collectors.joining(", "));
  }

  /**
   * The core has risen by 5 °F at 08:08 and has fallen by 3 at 11:10, so that a slow clock shows
   * from 20 minutes on, and a fast one only where no meat answers so slowly.
   */
  @ParameterizedTest
  @CsvSource({
    "0, ''",
    "-15, ''",
    "-19, ask clock offset",
    "-37, ask clock offset",
    "-60, ask clock offset",
    "20, ''",
    "54, ''",
    "56, ask clock offset",
    "120, ask clock offset"
  })
  void a_clock_that_no_slowness_of_meat_explains_is_asked_about(int minutes, String found) {
    assertEquals(found, found(CoreLog.everyMinute().clock(minutes, minutes).bench()));
  }

  @Test
  void what_the_log_shows_and_what_was_written_are_told_with_both_times() {
    Fault fault =
        CoreLog.everyMinute().clock(-37, -37).bench().doubts().stream()
            .filter(each -> each.rule().equals("clock offset"))
            .findFirst()
            .orElseThrow();
    assertEquals(
        "the clock of P1 29 min to 82 min behind: the core rises from 07:31 on, into smoke was"
            + " written for 08:00; it falls from 10:33 on, out of smoke was written for 11:00",
        fault.found().toString());
    assertEquals("2026-02-24/p1-log.csv:2:P1", fault.place().toString());
  }

  /** By minutes that it is ahead when the lot goes in, and ten hours later. */
  @ParameterizedTest
  @CsvSource({
    "0, 0, ''",
    "-5, 10, ''",
    "0, -150, ask clock offset",
    "0, -290, ask clock offset",
    "0, -330, ask clock drift"
  })
  void a_clock_that_loses_time_is_asked_about(int load, int end, String found) {
    assertEquals(found, found(CoreLog.everyMinute().clock(load, end).bench()));
  }

  @ParameterizedTest
  @CsvSource({"57, ''", "59, ask clock drift"})
  void a_clock_that_was_set_while_it_ran_is_asked_about(int minutes, String found) {
    assertEquals(found, found(CoreLog.everyMinute().clockSet("09:30", minutes).bench()));
  }

  /** A dying fire lets the core fall as well, but slowly: that is no clock. */
  @Test
  void a_core_that_falls_slowly_in_the_smoke_says_nothing_of_the_clock() {
    CoreLog log = CoreLog.everyMinute().ramp("09:30", 120, 85, "11:30");
    assertEquals("", found(log.bench()));
  }

  @ParameterizedTest
  @CsvSource({
    "2026-02-24 08:00:00, ''",
    "2026-02-01 05:00:00, ask time far from its step",
    "2026-02-01 04:59:59, 'ask time before the lot, ask time far from its step'",
    "2026-02-23 08:00:00, ''",
    "2026-02-23 07:59:59, ask time far from its step",
    "2026-02-25 08:00:00, ''",
    "2026-02-25 08:00:01, ask time far from its step"
  })
  void a_log_that_begins_elsewhere_is_asked_about(String begin, String found) {
    Bench bench =
        CoreLog.lot()
            .file(
                "core.csv",
                "Time,P1\n" + begin + ",45.0\n",
                """
                {"files": "core.csv", "instrument": "LG-A",
                 "time": {"column": "Time", "pattern": "yyyy-MM-dd HH:mm:ss", "zone": "America/New_York"},
                 "columns": [{"column": "P1", "what": "internal temperature", "unit": "°F", "lot": "A1"}]}\
                """);
    assertEquals(found, found(bench));
  }
}
