package org.flitchbook.check;

import static org.flitchbook.check.Verdict.NOT_MET;
import static org.flitchbook.check.Verdict.NOT_SHOWN;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;
import org.flitchbook.input.Fault;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Bad lots that look good to whoever believes every row of the log, and the rule that sees it. */
final class BelievedTest {

  private static final String COOLING = "us.b99.cooling-1";
  private static final String FINISH =
      "\"kind\": \"floor\", \"quantity\": \"peak internal temperature\", \"atLeast\": \"145 °F\"";
  private static final String HELD =
      "\"kind\": \"time-at-temperature\", \"what\": \"internal temperature\", \"rows\":"
          + " [{\"atLeast\": \"145 °F\", \"for\": \"20 min\"}]";

  private static List<String> rules(Judgement judged) {
    return judged.openFaults().stream().map(Fault::rule).distinct().toList();
  }

  /** The true cooling takes 115 minutes from 130 to 80 °F. */
  private record Slow(Verdict verdict, String rule, Consumer<CoreLog> damage) {

    void test() {
      CoreLog log = CoreLog.slow();
      damage.accept(log);
      assertTrue(Naive.of(log.levels()).cools(), "believed, it cools in time");
      Judgement judged = log.inAir().judge();
      assertTrue(rules(judged).contains(rule), rules(judged).toString());
      assertEquals(verdict, Bench.found(judged, COOLING).verdict());
    }
  }

  @TestFactory
  List<DynamicTest> a_slow_cooling_does_not_pass() {
    return List.of(
            new Slow(NOT_SHOWN, "probe moved", log -> log.hold("11:50", "18:01", 36.5)),
            new Slow(NOT_SHOWN, "probe moved", log -> log.change("11:50", "18:01", x -> x - 30)),
            new Slow(NOT_SHOWN, "core equals air", log -> log.hold("11:35", "18:01", 36.5)),
            new Slow(
                NOT_SHOWN,
                "core equals air",
                log -> log.hold("12:30", "18:01", 36.5).silent("11:45", "12:30")),
            new Slow(
                NOT_SHOWN,
                "core on the wrong side of its air",
                log -> log.hold("11:30", "18:01", 33).silent("11:00", "11:30")),
            new Slow(
                NOT_SHOWN,
                "gap over a crossing",
                log -> log.change("13:50", "18:01", x -> x - 20).silent("11:45", "13:50")),
            new Slow(NOT_SHOWN, "clock offset", log -> log.clock(0, -150)),
            new Slow(NOT_SHOWN, "clock drift", log -> log.clock(0, -330)),
            new Slow(NOT_SHOWN, "log begins late", log -> log.silent("08:00", "12:50")),
            new Slow(
                NOT_MET,
                "re-warming",
                log -> log.ramp("11:35", 80, 78, "12:57").ramp("12:56", 15, 96, "13:12")))
        .stream()
        .map(each -> DynamicTest.dynamicTest(each.rule(), each::test))
        .toList();
  }

  /** A fridge's air and a core whose columns were swapped in logs.json. */
  @Test
  void a_core_swapped_with_its_air_does_not_pass() {
    CoreLog truth = CoreLog.slow();
    CoreLog core = CoreLog.slow().hold("11:30", "18:01", 37);
    assertTrue(Naive.of(core.levels()).cools());
    Judgement judged =
        core.bench()
            .log(
                "Cooler",
                "cooler temperature",
                "°F",
                "LG-A",
                "\"place\": \"F2\"",
                truth.silent("08:00", "11:30").text())
            .judge();
    assertTrue(
        rules(judged).contains("core on the wrong side of its air"), rules(judged).toString());
    assertEquals(Verdict.NOT_SHOWN, Bench.found(judged, COOLING).verdict());
  }

  /** The true core peaks at 140 °F. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "error value                | 10:30 | 10:31 | 185",
        "probe pulled and put back  | 10:20 | 10:26 | 170",
        "probe moved                | 10:30 | 11:00 | 170",
        "impossible value           | 10:30 | 11:00 | 230",
      })
  void a_cool_core_with_some_hot_rows_does_not_pass(
      String rule, String from, String until, double level) {
    CoreLog log =
        CoreLog.everyMinute()
            .change("08:00", "18:01", x -> Math.min(x, 140))
            .hold(from, until, level);
    assertTrue(Naive.of(log.levels()).peak() >= 145);
    Judgement judged = log.bench().own("finish", "smoke", FINISH).judge();
    assertTrue(
        judged.faults().stream().anyMatch(fault -> fault.rule().equals(rule)),
        judged.faults().toString());
    assertEquals("not met", Bench.found(judged, "finish").verdict().words());
  }

  /** Somebody typed one row of the log once more, with 145.2 °F for 140. */
  @Test
  void the_hotter_of_two_rows_of_one_time_does_not_pass() {
    String readings =
        "08:00:00..10:59:00/60 45>140; 11:00:00 145.2; 11:00:00 140; 11:01:00..17:00:00/60 140>38";
    Judgement judged =
        CoreLog.lot().own("finish", "smoke", FINISH).core("P1", "LG-0", readings).judge();
    assertEquals(List.of("two levels at one time"), rules(judged));
    assertEquals(Verdict.NOT_MET, Bench.found(judged, "finish").verdict());
  }

  /** The true core is at 100 °F at best, and its log is said to be in °C. */
  @Test
  void a_core_in_the_wrong_unit_does_not_pass() {
    String readings = "08:00:00..10:59:00/60 39>100; 11:00:00..17:00:00/60 100>38";
    Judgement judged =
        CoreLog.lot()
            .own("finish", "smoke", FINISH)
            .log("P1", "internal temperature", "°C", "LG-A", "\"lot\": \"A1\"", readings)
            .judge();
    assertTrue(
        Bench.found(judged, "finish").measured().orElseThrow().value().shown().startsWith("212"));
    assertEquals(List.of("unit mistaken", "log ends early"), rules(judged));
    assertEquals(Verdict.NOT_SHOWN, Bench.found(judged, "finish").verdict());
  }

  /** The fire died at 10:40; the log went on with what it had read then. */
  @Test
  void a_core_that_is_stuck_is_not_held() {
    CoreLog log =
        CoreLog.everyMinute().change("10:40", "11:00", x -> 146).change("11:00", "11:20", x -> 146);
    assertTrue(Naive.of(log.levels()).held(145) >= 20);
    Judgement judged =
        log.bench()
            .own("held", "smoke", HELD.replace("20 min", "15 min"))
            .log(
                "Chamber",
                "chamber temperature",
                "°F",
                "LG-A",
                "\"place\": \"SM\"",
                "08:00:00..11:00:00/60 199")
            .judge();
    assertEquals(List.of("probe moved", "stuck"), rules(judged));
    assertEquals(Verdict.NOT_MET, Bench.found(judged, "held").verdict());
  }

  /** From 130 to 80 °F in 95 minutes, of which it stuck for the first 15. */
  @Test
  void a_core_that_is_stuck_for_some_minutes_and_leaps_does_not_pass() {
    String readings =
        "08:00:00..11:00:00/300 45>150; 11:05:00..11:35:00/300 149>131; 11:40:00..11:50:00/300 131;"
            + " 11:55:00..13:10:00/300 122>80; 13:15:00..18:00:00/300 79>38";
    Judgement judged = CoreLog.lot().core("P1", "LG-0", readings).judge();
    assertEquals(List.of("stuck"), rules(judged));
    assertEquals(Verdict.NOT_SHOWN, Bench.found(judged, COOLING).verdict());
  }

  /** The probe is in a thin end: by hand the thickest place has 138 °F. */
  @Test
  void a_log_of_a_thin_end_does_not_pass() {
    CoreLog log = CoreLog.everyMinute();
    assertTrue(Naive.of(log.levels()).peak() >= 145);
    Judgement judged =
        log.bench()
            .own("finish", "smoke", FINISH)
            .write("smoke,10:59,internal temperature,thickest,138.0,°F,MA,HT-1")
            .judge();
    assertEquals(List.of("hand and log disagree"), rules(judged));
    assertEquals(Verdict.NOT_SHOWN, Bench.found(judged, "finish").verdict());
  }

  /** Two probes in one lot, one of which was never in the meat. */
  @Test
  void the_hotter_of_two_probes_does_not_speak_for_the_other() {
    CoreLog cool = CoreLog.everyMinute().change("08:00", "18:01", x -> 37 + (x - 37) * 0.85);
    Judgement judged =
        CoreLog.everyMinute()
            .bench()
            .own("finish", "smoke", FINISH)
            .core("P2", "LG-A", cool.text())
            .judge();
    assertEquals(List.of("probes disagree"), rules(judged));
    assertEquals(Verdict.NOT_MET, Bench.found(judged, "finish").verdict());
  }

  @Test
  void a_log_that_ends_early_shows_no_end() {
    Judgement judged = CoreLog.everyMinute().silent("15:00", "18:01").bench().judge();
    assertEquals(List.of("log ends early"), rules(judged));
    assertEquals(Verdict.NOT_SHOWN, Bench.found(judged, COOLING).verdict());
    assertTrue(
        judged.openFaults().get(0).found().toString().startsWith("the log of P1 ends at 55."),
        judged.openFaults().get(0).found().toString().toLowerCase(Locale.ROOT));
  }
}
