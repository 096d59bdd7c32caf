package org.flitchbook.doubt;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.flitchbook.check.Bench;
import org.flitchbook.check.CoreLog;
import org.flitchbook.check.Judgement;
import org.flitchbook.input.Explained;
import org.flitchbook.input.Fault;
import org.flitchbook.message.Message;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What bears out an explanation: only what bears on the fault, and the message names it. */
final class BearingTest {

  private static final String IN_A = "\"lot\": \"A1\", \"piece\": \"a\"";

  /** Readings of the core by hand, each {@code time degrees}, with its thermometer and piece. */
  private static Bench byHand(Bench bench, String readings) {
    for (String reading : readings.split("; ", -1)) {
      String[] words = (reading + "   ").split(" ", -1);
      String thermometer = words[2].isEmpty() ? "HT-1" : words[2];
      String sheet = words[0].compareTo("11:00:00") <= 0 ? "smoke" : "chill";
      bench.write(
          "%s,%s,internal temperature,thickest,%s,°F,MA,%s,,,%s"
              .formatted(sheet, words[0], words[1], thermometer, words[3]));
    }
    return bench;
  }

  /** What the explanation of a rule lacks; empty where it is borne out. */
  private static String lacks(Bench bench, String rule, String evidence) {
    Fault fault =
        bench.doubts().stream()
            .filter(each -> each.rule().equals(rule))
            .findFirst()
            .orElseThrow(() -> new AssertionError(rule + " is not asked: " + bench.doubts()));
    String place = fault.place().toString().replace("2026-02-24/", "");
    bench.write("actions,20:00:00,explained,%s %s,%s,,MA,,why".formatted(rule, place, evidence));
    Judgement judged = bench.judge();
    return judged.faults().stream()
        .filter(each -> each.rule().equals(rule))
        .flatMap(each -> each.explained().stream())
        .map(Explained::lacks)
        .findFirst()
        .orElseThrow(() -> new AssertionError("not explained: " + judged.faults()))
        .map(Message::toString)
        .orElse("")
        .replace("2026-02-24/", "");
  }

  private static String why(String lacks) {
    return lacks.split("; what counts: ", 2)[0];
  }

  /** P1 sat in piece a of 38 mm; b has 52. The log has 147.1 at 10:55, 114.9 at 12:00. */
  @ParameterizedTest(name = "{0}: {1}")
  @CsvSource(
      delimiter = '|',
      value = {
        "10:55:00 147.0 HT-1 b; 12:00:00 115.0 HT-1 b | ''",
        "10:55:00 149.0 HT-1 b; 12:00:00 112.0 HT-1 b | ''",
        "10:55:00 147.0 HT-1 b | it shows the piece at the finish or while it cools, not both",
        "12:00:00 115.0 HT-1 b | it shows the piece at the finish or while it cools, not both",
        "10:55:00 147.0 HT-1 b; 17:50:00 37.1 HT-1 b | it shows the piece at the finish or while it"
            + " cools, not both",
        "08:10:00 50.8 HT-1 b; 12:00:00 115.0 HT-1 b | it shows the piece at the finish or while it"
            + " cools, not both",
        "10:55:00 145.0 HT-1 b; 12:00:00 115.0 HT-1 b | smoke.csv:4 lags behind the log",
        "10:55:00 147.0 HT-1 b; 12:00:00 117.0 HT-1 b | chill.csv:4 lags behind the log",
        "10:55:00 147.0 HT-1 a; 12:00:00 115.0 HT-1 a | smoke.csv:4 is not of the thickest piece",
        "10:55:00 147.0 HT-1; 12:00:00 115.0 HT-1 | smoke.csv:4 is not of the thickest piece",
        "10:55:00 147.0 LG-A b; 12:00:00 115.0 HT-1 b | smoke.csv:4 was read with the same"
            + " instrument",
      })
  void a_thicker_piece_is_shown_by_readings_of_that_piece(String readings, String lacks) {
    Bench bench =
        CoreLog.lot()
            .log("P1", "internal temperature", "°F", "LG-A", IN_A, CoreLog.everyMinute().text())
            .write(
                "cure,05:00:00,thickness,,38,mm,MA,,,,a", "cure,05:00:00,thickness,,52,mm,MA,,,,b");
    boolean both = readings.contains(";");
    String first = readings.startsWith("12") ? "chill.csv:4" : "smoke.csv:4";
    assertEquals(
        lacks,
        why(
            lacks(
                byHand(bench, readings),
                "thicker piece without a probe",
                "confirmed " + first + (both ? " chill.csv:4" : ""))));
  }

  /** A log an hour behind: it has 97.5 at 08:30, 123.6 at 10:50, 45 minutes before the truth. */
  @ParameterizedTest(name = "{0}: {1}")
  @CsvSource(
      delimiter = '|',
      value = {
        "08:30:00 97.5; 10:50:00 123.6 | ''",
        "09:00:00 115.0; 10:50:00 123.6 | ''",
        "08:30:00 97.5 | it shows the clock at one end of the smoke at the most",
        "10:50:00 123.6 | it shows the clock at one end of the smoke at the most",
        "08:30:00 97.5; 09:00:00 115.0 | it shows the clock at one end of the smoke at the most",
        "09:00:01 115.0; 10:50:00 123.6 | it shows the clock at one end of the smoke at the most",
        "08:30:00 62.5; 10:50:00 123.6 | smoke.csv:4 does not agree with them",
        "08:30:00 97.5; 16:50:00 37.1 | chill.csv:4 agrees with the log 10 min before or after it"
            + " as well",
      })
  void a_clock_is_shown_by_readings_on_a_slope_near_both_ends(String readings, String lacks) {
    Bench bench = byHand(CoreLog.everyMinute().clock(-60, -60).bench(), readings);
    String second = readings.contains("; 16") ? " chill.csv:4" : " smoke.csv:5";
    assertEquals(
        lacks,
        why(
            lacks(
                bench,
                "clock offset",
                "confirmed smoke.csv:4" + (readings.contains(";") ? second : ""))));
  }

  /** At the finish P1 has 149.4 °F and P2 171.9. */
  @ParameterizedTest(name = "{0}: {1}")
  @CsvSource(
      delimiter = '|',
      value = {
        "smoke.csv:4 | 10:59:00 149.5 | ''",
        "smoke.csv:4 | 10:59:00 172.5 | ''",
        "smoke.csv:4 | 10:59:00 160.0 | smoke.csv:4 does not agree with them",
        "smoke.csv:4 | 10:50:00 144.2 | ''",
        "smoke.csv:4 | 10:49:00 143.6 | smoke.csv:4 is not within 10 min of that time",
        "smoke.csv:4 | 08:10:00 50.8  | smoke.csv:4 is not within 10 min of that time",
        "p1-log.csv:181 | 10:59:00 149.5 | p1-log.csv:181:P1 is no third reading",
      })
  void probes_that_disagree_want_a_third_reading(String evidence, String reading, String lacks) {
    CoreLog hotter = CoreLog.everyMinute().change("08:00", "18:01", x -> 37 + (x - 37) * 1.2);
    Bench bench = CoreLog.everyMinute().bench().core("P2", "LG-A", hotter.text());
    assertEquals(lacks, why(lacks(byHand(bench, reading), "probes disagree", evidence)));
  }

  /** HT-1 has 138 °F at 10:59, the log 149.4. */
  @ParameterizedTest(name = "{0}: {1}")
  @CsvSource(
      delimiter = '|',
      value = {
        "11:00:00 150.0 HT-0 | ''",
        "10:58:00 148.8 HT-0 | ''",
        "11:00:00 150.0 HT-1 | smoke.csv:5 is no third reading",
        "10:54:30 144.5 HT-0 | smoke.csv:5 does not agree with them",
        "08:10:00 50.8 HT-0  | smoke.csv:5 is not within 10 min of that time",
      })
  void a_hand_that_disagrees_with_the_log_wants_a_third_reading(String third, String lacks) {
    Bench bench = CoreLog.everyMinute().bench();
    byHand(bench, "10:59:00 138.0 HT-1; " + third);
    String rule = "hand and log disagree";
    assertEquals(
        lacks, why(lacks(bench, rule, "smoke.csv:5")).replace("chill.csv:4", "smoke.csv:5"));
  }

  /** It stands still at 146 °F from 10:40 to 11:19, and the core had that at first. */
  @ParameterizedTest(name = "{0}: {1}")
  @CsvSource(
      delimiter = '|',
      value = {
        "11:19:00 146.0 | ''",
        "11:19:00 143.0 | smoke.csv:4 does not agree with them",
        "10:42:00 146.0 | smoke.csv:4 is not within 10 min of the last of them",
      })
  void a_log_that_stands_still_is_shown_by_a_reading_at_its_end(String reading, String lacks) {
    Bench bench = byHand(CoreLog.everyMinute().hold("10:40", "11:20", 146).inAir(), reading);
    String line = reading.startsWith("11") ? "chill.csv:4" : "smoke.csv:4";
    assertEquals(
        lacks, why(lacks(bench, "stuck", "confirmed " + line)).replace("chill.csv", "smoke.csv"));
  }

  /** An agreeing reading of cold meat closes the question, and restores no limit. */
  @ParameterizedTest
  @CsvSource({
    "08:10:00 50.8 HT-1 b; 08:20:00 56.7 HT-1 b, smoke.csv:4 smoke.csv:5, not shown",
    "10:55:00 147.0 HT-1 b; 12:00:00 115.0 HT-1 b, smoke.csv:4 chill.csv:4, met",
  })
  void a_limit_rests_on_what_bears_on_it(String readings, String evidence, String verdict) {
    Bench bench = byHand(thick(), readings);
    lacks(bench, "thicker piece without a probe", "confirmed " + evidence);
    Judgement judged = bench.judge();
    assertEquals(List.of(), judged.openFaults());
    assertEquals(verdict, judged.findings().get(0).verdict().words());
  }

  /** Nobody checked LG-A before. */
  @ParameterizedTest(name = "{0}: {1}")
  @CsvSource(
      delimiter = '|',
      value = {
        "smoke.csv:4       | ''",
        "smoke.csv:5       | smoke.csv:5 is not within 60 min of the end of the smoke",
        "instruments.csv:3 | ''",
      })
  void an_unchecked_logger_wants_a_check_or_a_reading_in_the_heat(String evidence, String lacks) {
    Bench bench =
        byHand(
            Bench.unchecked()
                .doubting()
                .rule("us.b99.cooling-1")
                .write(
                    "cure,2026-02-01 05:00,product,P",
                    "instruments,2026-02-01 06:00,ice point,,32.0,°F,MA,HT-1",
                    "instruments,2026-02-25 06:00,ice point,,32.0,°F,MA,LG-A",
                    "smoke,08:00:00,into smoke,SM",
                    "smoke,11:00:00,out of smoke",
                    "chill,11:30:00,into chill,F2",
                    "chill,18:00:00,out of chill")
                .core("P1", "LG-A", CoreLog.everyMinute().text()),
            "10:50:00 144.2; 08:10:00 50.8");
    assertEquals(lacks, why(lacks(bench, "instrument not in force", evidence)));
  }

  /** Where nothing was measured, the same by another person; a check of a scale shows no weight. */
  @ParameterizedTest(name = "{0} {1}: {2}")
  @CsvSource(
      delimiter = '|',
      value = {
        "entered days later   | cure.csv:5        | cure.csv:5 was written by the same person",
        "entered days later   | cure.csv:6        | cure.csv:6 is no other turned of it",
        "finer than its scale | instruments.csv:9 | instruments.csv:9 is not within 60 min of it",
      })
  void an_entry_is_shown_by_another_of_the_same(String rule, String evidence, String lacks) {
    Bench bench =
        Bench.book()
            .write(
                "cure,2026-02-10 09:00:00,into cure,F1",
                "cure,2026-02-11 08:00:00,turned,,,,MA,,,,,,2026-02-13 09:00:00",
                "cure,2026-02-11 08:00:30,turned,,,,MA",
                "cure,2026-02-11 08:10:00,cooler temperature,F1,38.0,°F,MA,HT-0",
                "cure,2026-02-11 09:00:00,weight,,11.535,g,MA,S-001",
                "instruments,2026-02-12 06:00:00,check weight,100 g,100.00,g,MA,S-001");
    assertEquals(lacks, why(lacks(bench, rule, evidence)));
  }

  private static Bench thick() {
    return CoreLog.lot()
        .log("P1", "internal temperature", "°F", "LG-A", IN_A, CoreLog.everyMinute().text())
        .write("cure,05:00:00,thickness,,38,mm,MA,,,,a", "cure,05:00:00,thickness,,52,mm,MA,,,,b");
  }

  private static List<String> counts() {
    CoreLog hotter = CoreLog.everyMinute().change("08:00", "18:01", x -> 37 + (x - 37) * 1.2);
    return List.of(
        lacks(thick(), "thicker piece without a probe", "confirmed"),
        lacks(CoreLog.everyMinute().clock(-60, -60).bench(), "clock offset", "confirmed"),
        lacks(
            CoreLog.everyMinute().bench().core("P2", "LG-A", hotter.text()),
            "probes disagree",
            "confirmed"),
        lacks(CoreLog.everyMinute().hold("12:00", "12:45", 38).bench(), "probe moved", "excluded"),
        lacks(
            CoreLog.everyMinute().hold("12:00", "12:45", 38).bench(), "probe moved", "confirmed"));
  }

  @Test
  void what_is_not_believed_is_told_what_would_count() {
    String none = "no other evidence is named; what counts: ";
    assertEquals(
        List.of(
            none
                + "readings of the thickest piece by another thermometer, with the piece named: one"
                + " in the last 60 min of the smoke, no colder than the log, and one while it"
                + " cools, no warmer",
            none
                + "two readings by another thermometer that agree with the log while the core"
                + " changes, one within 60 min of going into the smoke and one within 60 min of"
                + " coming out",
            none
                + "a third reading by another thermometer within 10 min of that time, which agrees"
                + " with the log",
            none
                + "a reading by another thermometer or probe within 10 min of one of them that does"
                + " not agree with it",
            none
                + "a reading by another thermometer or probe that agrees with them, within 10 min"
                + " of one of them and 60 min after they began"),
        counts());
  }
}
