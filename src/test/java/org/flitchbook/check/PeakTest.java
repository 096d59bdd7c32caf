package org.flitchbook.check;

import static org.flitchbook.check.Said.formulas;
import static org.flitchbook.check.Said.reasons;
import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The highest that each probe read in the heat. */
final class PeakTest {

  private static String verdict(Bench bench, String limit) {
    return bench.finding(limit).verdict().words();
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
    "85.6, 12:00, not shown, 'P1 at 09:00: 85.6 °F + 0.5 °F = 86.1 °F', 'P1 peaks at 85.6 °F; with"
        + " the instrument''s error against the lot it is above 86 °F'",
    "86.1, 12:00, not met, 'P1 at 09:00: 86.1 °F + 0.5 °F = 86.6 °F', 'P1 peaks at 86.1 °F, above"
        + " 86 °F'",
    "86.1, 09:30, not met, 'P1 at 09:00: 86.1 °F + 0.5 °F = 86.6 °F', 'P1 peaks at 86.1 °F, above"
        + " 86 °F'",
    "85.6, 09:30, not shown, 'P1 at 09:00: 85.6 °F + 0.5 °F = 86.1 °F', 'P1 peaks at 85.6 °F; with"
        + " the instrument''s error against the lot it is above 86 °F'",
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
    assertEquals(formula, formulas(finding));
    assertEquals(reason, reasons(finding));
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

  @Test
  void of_two_peaks_alike_the_first_is_told() {
    Bench bench =
        Bench.book()
            .own("cold", "smoke", COLD_SMOKED)
            .write("smoke,08:00:00,into smoke,SM", "smoke,10:00:00,out of smoke")
            .core("P1", "LG-A", "08:00:00 40; 08:30:00 85; 09:00:00 80; 09:30:00 85; 10:00:00 70");
    assertEquals("P1 at 08:30: 85 °F + 0.5 °F = 85.5 °F", formulas(bench.finding("cold")));
  }

  @Test
  void a_peak_may_be_the_first_reading() {
    Bench bench =
        Bench.book()
            .own("cold", "smoke", COLD_SMOKED)
            .write("smoke,08:00:00,into smoke,SM", "smoke,10:00:00,out of smoke")
            .core("P1", "LG-0", "08:00:00 86.1; 08:30:00 85; 09:00:00 80; 10:00:00 70");
    assertEquals("not met", verdict(bench, "cold"));
  }

  /** Of at least 145 °F, out of the smoke at 10:00: what nobody saw is neither met nor missed. */
  @ParameterizedTest(name = "{0}: {1}")
  @CsvSource(
      delimiter = '|',
      value = {
        // over the finish, for more than 5 minutes; not where a reading by hand saw it
        "08:00:00..09:50:00/60 40>144; 10:10:00..12:00:00/60 140>60 | not shown | ''",
        "08:00:00..09:57:00/60 40>144; 10:02:00..12:00:00/60 140>60 | not met   | ''",
        "08:00:00..09:57:00/60 40>144; 10:02:01..12:00:00/60 140>60 | not shown | ''",
        "08:00:00..09:50:00/60 40>144; 10:10:00..12:00:00/60 140>60 | not met   | 144.1",
        "08:00:00..09:50:00/60 40>144; 10:10:00..12:00:00/60 140>60 | met       | 145.0",
        // the log began again with its highest, or ended before the finish
        "08:00:00..09:30:00/60 40>138; 09:50:00..12:00:00/60 144>60 | not shown | ''",
        "08:00:00..09:50:00/60 40>144                               | not shown | ''",
        "08:00:00..09:55:00/60 40>144                               | not met   | ''",
        "10:06:00..12:00:00/60 140>60                               | not shown | ''",
        // elsewhere
        "08:00:00..08:30:00/60 40>60; 08:50:00..10:00:00/60 70>144; 10:01:00..12:00:00/60 143>60 |"
            + " not met | ''",
        "08:00:00..10:00:00/60 40>144; 10:20:00..12:00:00/60 140>60 | not met   | ''",
        "08:00:00..10:00:00/60 40>144; 10:30:00..12:00:00/60 130>60 | not met   | ''",
      })
  void a_gap_over_the_finish_leaves_the_peak_open(String log, String verdict, String byHand) {
    Bench bench =
        Bench.book()
            .own("finish", "smoke", Suspects.FINISH)
            .write(
                "smoke,08:00:00,into smoke,SM",
                "smoke,10:00:00,out of smoke",
                "chill,10:05:00,into chill,F2",
                "chill,18:00:00,out of chill")
            .core("P1", "LG-0", log);
    if (!byHand.isEmpty()) {
      bench.write("smoke,09:59:00,internal temperature,," + byHand + ",°F");
    }
    assertEquals(verdict, verdict(bench, "finish"));
  }
}
