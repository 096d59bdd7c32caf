package org.flitchbook.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.flitchbook.input.Fault;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * One piece, two loggers in a row: the smoker's probe is taken out of it, the fridge's own is put
 * in some minutes later. The smoker's reads to within 0.5 °F, the fridge's is exact.
 */
final class HandoverTest {

  private static final String OF_LOT = "\"lot\": \"A1\"";
  private static final String COOLING = "us.b99.cooling-1";
  private static final String HELD =
      "\"kind\": \"time-at-temperature\", \"what\": \"internal temperature\", \"rows\":"
          + " [{\"atLeast\": \"145 °F\", \"for\": \"5 min\"}]";

  /** All that heat is asked for: the come-up, a peak and a time at a temperature. */
  private static Bench lot() {
    return CoreLog.lot()
        .own("finish", "smoke", Suspects.FINISH)
        .own("held", "smoke", HELD)
        .own(
            "come-up",
            "smoke",
            "\"kind\": \"span\", \"what\": \"internal temperature\", \"from\": \"50 °F\", \"to\":"
                + " \"130 °F\", \"atMost\": \"6 h\"");
  }

  private static CoreLog until(CoreLog log, String time) {
    return log.silent(time, "18:01");
  }

  private static CoreLog from(CoreLog log, String time) {
    return log.silent("08:00", time);
  }

  private static Bench smokers(CoreLog log, String until) {
    return lot().core("P1", "LG-A", until(log, until).text());
  }

  private static Bench twoLoggers(CoreLog smoker, String until, CoreLog fridge, String from) {
    return smokers(smoker, until).core("F9", "LG-0", from(fridge, from).text());
  }

  private static Bench twoLoggers(String until, String from) {
    return twoLoggers(CoreLog.everyMinute(), until, CoreLog.everyMinute(), from);
  }

  private static String said(Judgement judged) {
    Set<String> rules = new TreeSet<>();
    judged.openFaults().stream().map(Fault::rule).forEach(rules::add);
    return judged.findings().stream()
            .filter(
                finding ->
                    Set.of(COOLING, "finish", "held", "come-up").contains(finding.limit().id()))
            .map(finding -> finding.limit().id() + " " + finding.verdict().words())
            .collect(Collectors.joining(", "))
        + " "
        + rules;
  }

  private static final String ALL_MET =
      "us.b99.cooling-1 met, finish met, held met, come-up met []";

  private static boolean looksGood(Judgement judged) {
    return said(judged).equals(ALL_MET);
  }

  /** P1's last reading is a minute before; F9 may follow within 15 minutes, or be in before. */
  @ParameterizedTest(name = "P1 to {0}, F9 from {1}: {2}")
  @CsvSource({
    "11:21, 11:25, true",
    "11:21, 11:35, true",
    "11:21, 11:36, false",
    "11:21, 11:21, true",
    "11:21, 11:16, true",
    "11:21, 11:05, true",
    "11:21, 11:04, false",
    "11:46, 11:55, true",
    "12:10, 12:20, true"
  })
  void two_probes_that_hand_over_are_one_curve(String until, String from, boolean good) {
    Judgement judged = twoLoggers(until, from).judge();
    assertEquals(good, looksGood(judged), () -> said(judged) + judged.faults());
  }

  /** Its log with other noise, rounding and interval than the smoker's; up to 0.5 °F off. */
  @ParameterizedTest
  @CsvSource({"30, 60", "60, 300", "300, 60", "120, 600", "10, 900"})
  void two_loggers_with_noise_hand_over(int smokers, int fridges) {
    for (long seed = 0; seed < 20; seed++) {
      CoreLog one = CoreLog.every(smokers).noisy(0.45, seed);
      CoreLog other = CoreLog.every(fridges).noisy(0.45, seed + 100);
      Bench bench = smokers(one, "11:21").core("F9", "LG-A", from(other, "11:26").text());
      Judgement judged = bench.judge();
      assertTrue(looksGood(judged), () -> said(judged) + judged.faults());
    }
  }

  @Test
  void they_may_write_in_other_units() {
    Bench bench =
        smokers(CoreLog.everyMinute(), "11:21")
            .log(
                "F9",
                "internal temperature",
                "°C",
                "LG-0",
                OF_LOT,
                from(CoreLog.everyMinute(), "11:31")
                    .change("08:00", "18:01", fahrenheit -> (fahrenheit - 32) / 1.8)
                    .text());
    assertEquals(ALL_MET, said(bench.judge()));
  }

  /** A contradiction: F9 reads off by more than 0.5 °F and what the slopes of both leave open. */
  @ParameterizedTest(name = "{0}: {1}")
  @CsvSource({
    "0, true",
    "-0.5, true",
    "0.5, true",
    "-2, false",
    "2, false",
    "-20, false",
    "5, false"
  })
  void a_contradiction_where_they_meet_makes_them_two(double off, boolean good) {
    CoreLog fridge = CoreLog.everyMinute().change("08:00", "18:01", level -> level + off);
    Judgement judged = twoLoggers(CoreLog.everyMinute(), "11:21", fridge, "11:21").judge();
    assertEquals(good, looksGood(judged), () -> said(judged) + judged.faults());
  }

  private static final List<String> SLOW =
      List.of("11:21", "11:31", "11:46", "11:55", "12:20", "12:30", "13:00", "13:14");

  /** What is too slow in one log is so in two, wherever they meet. */
  @Test
  void a_slow_cooling_is_so_in_two_logs() {
    for (int i = 0; i < SLOW.size(); i += 2) {
      Judgement judged =
          twoLoggers(CoreLog.slow(), SLOW.get(i), CoreLog.slow(), SLOW.get(i + 1)).judge();
      assertFalse(looksGood(judged), () -> said(judged));
      assertEquals("not met", Bench.found(judged, COOLING).verdict().words(), SLOW.get(i));
    }
  }

  /** An hour on the bench at 125 °F, which neither probe saw. */
  @ParameterizedTest(name = "F9 from {0}, its clock {1} min slow")
  @CsvSource({"12:50, 0", "12:50, 60", "12:50, 65", "12:50, 70", "13:30, 100"})
  void a_handover_hides_no_warm_hour(String from, int slow) {
    CoreLog fridge = from(benched(), from).clock(-slow, -slow);
    Judgement judged = smokers(benched(), "11:46").core("F9", "LG-0", fridge.text()).judge();
    assertFalse(looksGood(judged), () -> said(judged));
  }

  private static CoreLog benched() {
    return CoreLog.slow().ramp("11:46", 30, 118, "12:50").ramp("12:49", 70, 78, "18:01");
  }

  private static final String STATED = OF_LOT + ", \"continues\": \"P1\"";

  private static Bench with(Bench bench, String probe, String of, CoreLog log) {
    return bench.log(probe, "internal temperature", "°F", "LG-0", of, log.text());
  }

  /** Beside P1, P2 was in another piece, and cooled too slowly once it was out of the smoker. */
  @ParameterizedTest
  @ValueSource(strings = {OF_LOT, STATED, OF_LOT + ", \"continues\": \"P2\""})
  void a_third_probe_is_not_made_good_by_it(String of) {
    CoreLog first = until(CoreLog.everyMinute(), "11:21");
    CoreLog second = until(CoreLog.everyMinute(), "11:25");
    Bench bench = with(lot(), "P1", OF_LOT, first);
    with(bench, "P2", OF_LOT, second);
    with(bench, "F9", of, from(CoreLog.everyMinute(), "11:31"));
    assertFalse(looksGood(bench.judge()), () -> said(bench.judge()));
  }

  @Test
  void of_four_probes_logs_json_says_which_went_on_for_which() {
    Bench bench = with(lot(), "P1", OF_LOT, until(CoreLog.everyMinute(), "11:21"));
    with(bench, "P2", OF_LOT, until(CoreLog.everyMinute(), "11:25"));
    with(bench, "F1", STATED, from(CoreLog.everyMinute(), "11:31"));
    Bench stated =
        with(bench, "F2", STATED.replace("P1", "P2"), from(CoreLog.everyMinute(), "11:32"));
    assertEquals(ALL_MET, said(stated.judge()));
  }

  @Test
  void two_that_are_said_to_go_on_for_one_do_not() {
    Bench bench = with(lot(), "P1", OF_LOT, until(CoreLog.everyMinute(), "11:21"));
    with(bench, "F1", STATED, from(CoreLog.everyMinute(), "11:31"));
    with(bench, "F2", STATED, from(CoreLog.everyMinute(), "11:32"));
    assertFalse(looksGood(bench.judge()));
  }

  @Test
  void what_is_stated_must_not_contradict_either() {
    CoreLog colder = CoreLog.everyMinute().change("08:00", "18:01", level -> level - 25);
    Bench bench =
        with(smokers(CoreLog.everyMinute(), "11:21"), "F9", STATED, from(colder, "11:31"));
    assertFalse(looksGood(bench.judge()));
  }

  @ParameterizedTest
  @CsvSource({"a, a, true", "a, b, false", "a, '', true", "'', b, true"})
  void two_pieces_are_two_curves(String first, String then, boolean good) {
    Bench bench = with(lot(), "P1", of(first), until(CoreLog.everyMinute(), "11:21"));
    with(bench, "F9", of(then), from(CoreLog.everyMinute(), "11:31"));
    assertEquals(good, looksGood(bench.judge()));
  }

  private static String of(String piece) {
    return piece.isEmpty() ? OF_LOT : OF_LOT + ", \"piece\": \"" + piece + "\"";
  }

  /** P1's peak is too low; F9, which reads a little higher, can't lift it. */
  @Test
  void the_heat_is_that_of_the_probe_that_was_in_it() {
    CoreLog low = CoreLog.everyMinute().change("08:00", "18:01", level -> Math.min(level, 144.8));
    CoreLog fridge = CoreLog.everyMinute().change("08:00", "18:01", level -> level + 0.4);
    Finding finish = Bench.found(twoLoggers(low, "11:18", fridge, "11:18").judge(), "finish");
    assertEquals("not met", finish.verdict().words());
  }

  /** One of the chill alone that went on for no other: its piece was seen by nobody in the heat. */
  @Test
  void a_probe_that_was_put_in_for_no_other_shows_no_heat() {
    Bench bench = with(lot(), "P1", OF_LOT, CoreLog.everyMinute());
    with(bench, "P2", OF_LOT, from(CoreLog.everyMinute(), "11:05"));
    assertFalse(looksGood(bench.judge()));
  }

  @Test
  void a_probe_that_no_log_has_is_asked_about() {
    Bench bench =
        with(
            smokers(CoreLog.everyMinute(), "11:21"),
            "F9",
            STATED.replace("P1", "P7"),
            from(CoreLog.everyMinute(), "11:31"));
    Fault asked =
        bench.judge().faults().stream()
            .filter(fault -> fault.rule().equals("probe"))
            .findFirst()
            .orElseThrow();
    assertEquals("F9 continues P7, which no log of the lot has", asked.found().toString());
  }

  /** Of F9's log nothing may be believed, so that only the readings by hand are left of it. */
  @Test
  void a_probe_without_a_reading_goes_on_for_none() {
    Bench bench =
        smokers(CoreLog.everyMinute(), "11:21")
            .core(
                "F9",
                "LG-0",
                from(CoreLog.everyMinute(), "11:31").hold("11:31", "18:01", 999.9).text())
            .write("chill,12:00:00,internal temperature,thickest,115.1,°F");
    assertFalse(looksGood(bench.judge()));
  }
}
