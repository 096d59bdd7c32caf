package org.flitchbook.check;

import static org.flitchbook.check.Said.reasons;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.flitchbook.input.Fault;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * Each rule for dirty data by itself: a lot that looks good to anyone who believes every row, and
 * does not once that rule alone is there. A note that takes nothing out changes no verdict.
 */
final class EachRuleTest {

  /** What a leap is, that rule says; the others ask what comes of it. */
  private static final String LEAP = "probe moved";

  private static final Set<String> LEAPING =
      Set.of(
          "probe not in the meat",
          "probe pulled and put back",
          "probe pulled at the finish",
          "explanation");

  /**
   * A lot that must not look good.
   *
   * @param believed whether it does so to anyone who believes every row
   */
  private record Bad(String rule, String limit, Supplier<Bench> lot, boolean believed) {

    void test() {
      assertTrue(believed, () -> "not believed: " + told(judged(lot, Set.of()), limit));
      Judgement judged = judged(lot, LEAPING.contains(rule) ? Set.of(rule, LEAP) : Set.of(rule));
      assertFalse(looksGood(judged, limit), () -> told(judged, limit));
      assertTrue(faults(judged).contains(rule), () -> told(judged, limit));
    }
  }

  private static Judgement judged(Supplier<Bench> lot, Set<String> rules) {
    return lot.get().only(rules).judge();
  }

  private static boolean looksGood(Judgement judged, String limit) {
    return Bench.found(judged, limit).verdict() == Verdict.MET && judged.openFaults().isEmpty();
  }

  private static String told(Judgement judged, String limit) {
    Finding finding = Bench.found(judged, limit);
    return finding.verdict() + " " + reasons(finding) + " " + judged.faults();
  }

  private static Set<String> faults(Judgement judged) {
    return judged.faults().stream().map(Fault::rule).collect(Collectors.toSet());
  }

  /** Believed by the program itself, without any rule. */
  private static Bad bad(String rule, String limit, Supplier<Bench> lot) {
    return new Bad(rule, limit, lot, looksGood(judged(lot, Set.of()), limit));
  }

  /** Believed on straight lines; the program's own clock is careful without a rule, too. */
  private static Bad slow(String rule, CoreLog log) {
    return new Bad(rule, Suspects.COOLING, log::inAir, Naive.of(log.levels()).cools());
  }

  /** A core at 140 °F at best, but for some hot rows. */
  private static Bad cool(String rule, String from, String until, double level) {
    CoreLog log =
        CoreLog.everyMinute()
            .change("08:00", "18:01", x -> Math.min(x, 140))
            .hold(from, until, level);
    return bad(rule, "finish", () -> log.bench().own("finish", "smoke", Suspects.FINISH));
  }

  private static final List<Bad> BAD =
      Stream.of(logs(), heat(), hands(), sheets(), facts(), plans(), instruments())
          .flatMap(List::stream)
          .toList();

  private static List<Bad> logs() {
    return List.of(
        slow("gap over a crossing", Suspects.cooledBy(20, "13:50").silent("11:45", "13:50")),
        slow("log begins late", CoreLog.slow().silent("08:00", "12:50")),
        slow("log ends early", CoreLog.everyMinute().change("16:30", "18:01", x -> 40.4)),
        slow(
            "probe not in the meat",
            CoreLog.everyMinute()
                .change("14:00", "17:27", x -> Math.max(x, 42))
                .hold("17:27", "17:31", 36)
                .silent("17:31", "18:01")),
        slow("probe moved", CoreLog.slow().hold("11:50", "18:01", 36.5)),
        slow("core equals air", CoreLog.slow().hold("11:35", "18:01", 36.5)),
        slow(
            "core on the wrong side of its air",
            CoreLog.slow().hold("11:30", "18:01", 33).silent("11:00", "11:30")),
        slow("clock offset", CoreLog.slow().clock(0, -150)),
        slow("clock drift", CoreLog.slow().clock(0, -330)),
        slow(
            "re-warming",
            CoreLog.slow().ramp("11:35", 80, 78, "12:57").ramp("12:56", 15, 96, "13:12")),
        bad("time before the lot", Suspects.COOLING, () -> Suspects.after("2026-02-01 04:59:59")),
        bad(
            "time far from its step",
            Suspects.COOLING,
            () -> Suspects.after("2026-02-23 07:59:59")));
  }

  private static List<Bad> heat() {
    String warm = "08:00:00..10:59:00/60 39>100; 11:00:00..17:00:00/60 100>38";
    String twice =
        "08:00:00..10:59:00/60 45>140; 11:00:00 145.2; 11:00:00 140; 11:01:00..17:00:00/60 140>38";
    CoreLog hotter = CoreLog.everyMinute().change("08:00", "18:01", x -> 37 + (x - 37) * 1.2);
    CoreLog stuck = CoreLog.everyMinute().hold("10:40", "11:20", 146);
    return List.of(
        cool("error value", "10:30", "10:31", 185),
        cool("impossible value", "10:30", "11:00", 230),
        cool("probe pulled and put back", "10:20", "10:26", 170),
        cool("probe pulled at the finish", "10:52", "10:58", 170),
        bad(
            "unit mistaken",
            "finish",
            () ->
                CoreLog.lot()
                    .own("finish", "smoke", Suspects.FINISH)
                    .log("P1", "internal temperature", "°C", "LG-A", "\"lot\": \"A1\"", warm)),
        bad(
            "two levels at one time",
            "finish",
            () -> CoreLog.lot().own("finish", "smoke", Suspects.FINISH).core("P1", "LG-0", twice)),
        bad("stuck", "held", () -> stuck.inAir().own("held", "smoke", Suspects.HELD)),
        bad(
            "fire out",
            "finish",
            () ->
                Suspects.finished()
                    .log(
                        "Chamber",
                        "chamber temperature",
                        "°F",
                        "LG-A",
                        "\"place\": \"SM\"",
                        "08:00:00..09:59:00/60 199; 10:00:00..11:00:00/60 120")),
        bad(
            "probes disagree",
            "finish",
            () -> Suspects.finished().core("P2", "LG-A", hotter.text())),
        bad(
            "hand and log disagree",
            "finish",
            () ->
                Suspects.finished()
                    .write("smoke,10:59,internal temperature,thickest,138.0,°F,MA,HT-1")),
        bad(
            "core colder than its air was",
            Suspects.COOLING,
            () ->
                CoreLog.everyMinute()
                    .bench()
                    .write(
                        "chill,12:30,cooler temperature,F2,52.0,°F",
                        "chill,17:30,cooler temperature,F2,50.0,°F")),
        bad(
            "core falls beside warmer air",
            Suspects.COOLING,
            () ->
                CoreLog.everyMinute()
                    .bench()
                    .write(
                        "chill,11:40,cooler temperature,F2,36.0,°F",
                        "chill,14:00,cooler temperature,F2,90.0,°F",
                        "chill,15:00,cooler temperature,F2,90.0,°F")),
        bad(
            "chill faster than its air allows",
            Suspects.COOLING,
            () ->
                CoreLog.everyMinute()
                    .ramp("11:30", 40, 38, "18:01")
                    .bench()
                    .write("chill,11:30,cooler temperature,F2,36.0,°F")),
        bad(
            "dry though steamed or sealed",
            "moist",
            () ->
                CoreLog.everyMinute()
                    .bench()
                    .own("moist", "smoke", Suspects.MOIST)
                    .write("smoke,08:00:00,steam,,on")
                    .log(
                        "Sensor",
                        "humidity",
                        "%",
                        "LG-H",
                        "\"place\": \"SM\"",
                        "08:00:00..11:00:00/60 31")),
        bad(
            "probe in another load",
            Suspects.COOLING,
            () ->
                CoreLog.everyMinute()
                    .bench()
                    .write(
                        "smoke,07:00,into smoke,SM,,,MA,,,,a",
                        "smoke,08:00,into smoke,SM,,,MA,,,,b")),
        bad(
            "piece without a thickness",
            Suspects.COOLING,
            () ->
                CoreLog.everyMinute()
                    .bench()
                    .write(
                        "cure,05:00,thickness,,38,mm,MA,,,,a",
                        "cure,05:01,green weight,,2400,g,MA,S-10,,,b")),
        bad(
            "thicker piece without a probe",
            Suspects.COOLING,
            () ->
                CoreLog.everyMinute()
                    .bench()
                    .write(
                        "cure,05:00,thickness,,38,mm,MA,,,,a",
                        "cure,05:00,thickness,,52,mm,MA,,,,b")));
  }

  private static List<Bad> hands() {
    return List.of(
        bad(
            "curing salt out of its range",
            Suspects.NITRITE,
            () -> Suspects.cured("curing salt,C1,1.15,g")),
        bad(
            "cure for an unweighed piece",
            Suspects.NITRITE,
            () ->
                Suspects.cured("curing salt,C1,11.5,g")
                    .write("cure,2026-02-10 08:15,curing salt,C1,1,g,MA,S-001,,,b")),
        bad(
            "finer than its scale",
            Suspects.NITRITE,
            () -> Suspects.cured("curing salt,C1,11.53,g,MA,S-10")),
        bad(
            "scale too coarse",
            Suspects.NITRITE,
            () -> Suspects.cured("curing salt,C1,12,g,MA,S-10")),
        bad(
            "weight off its step",
            Suspects.NITRITE,
            () ->
                Suspects.cured("curing salt,C1,11.5,g")
                    .write("cure,2026-02-17 08:00,weight,,4790,g")),
        bad(
            "impossible hand reading",
            "finish",
            () -> Suspects.byHand("10:40 142.0; 10:50 253.0; 10:58 140.0")),
        bad(
            "hand reading in the other unit",
            "finish",
            () -> Suspects.byHand("10:30 60.0 °C; 10:40 143.0 °F; 10:50 145.0 °C; 10:58 64.0 °C")),
        bad(
            "hand reading leaps",
            "finish",
            () -> Suspects.byHand("10:40 132.0; 10:48 174.0; 10:56 137.0")),
        bad("entered days later", "turn", () -> Suspects.turned(12, "2026-02-17 12:00:00")));
  }

  private static List<Bad> sheets() {
    return List.of(
        bad(
            "row not used",
            "cold",
            () ->
                Suspects.cold("38.0", "38.4")
                    .write("cure,2026-02-10 12:10,cooler temperature,F2,58.0,°F")),
        bad(
            "out and in again",
            "cold",
            () ->
                Suspects.cold("38.0", "38.4")
                    .write(
                        "cure,2026-02-10 10:45,out of cure", "cure,2026-02-10 12:15,into cure,F1")),
        bad(
            "correction to be explained",
            Suspects.NITRITE,
            () ->
                Suspects.cured("curing salt,C1,18.5,g")
                    .write("cure,2026-02-10 08:10,curing salt,C1,11.5,g,MA,S-001,,cure.csv:5")),
        bad("place too cold", "cold", () -> Suspects.cold("8.0", "8.4")),
        bad(
            "impossible air or water",
            "cold",
            () ->
                Suspects.cold("38.0", "38.4")
                    .log(
                        "Fridge",
                        "cooler temperature",
                        "°F",
                        "LG-A",
                        "\"place\": \"F1\"",
                        "10:00:00..11:00:00/60 -148")
                    .write(
                        "cure,2026-02-24 09:30:00,into cure,F1",
                        "cure,2026-02-24 11:30:00,out of cure")),
        bad(
            "strength without its label",
            Suspects.NITRITE,
            () -> Suspects.cured("curing salt,CR,120,g")),
        bad(
            "curing salt under another word",
            Suspects.NITRITE,
            () ->
                Suspects.cured("curing salt,C1,11.5,g")
                    .write("cure,2026-02-10 08:12,salt,C1,97,g")),
        bad(
            "row of another method",
            Suspects.NITRITE,
            () ->
                Suspects.cured("curing salt,C1,11.5,g").write("cure,2026-02-10 08:20,pump,,10,%")),
        bad(
            "rind weighed though off",
            Suspects.NITRITE,
            () ->
                Suspects.cured("curing salt,C1,11.5,g")
                    .write("cure,2026-02-10 08:20,rind weight,,300,g,MA,S-10")));
  }

  /** What no limit looks at, and no one may pass over. */
  private static List<Bad> facts() {
    return List.of(
        fact("piece named once", "cure,2026-02-10 12:10,turned,,,,MA,,,,b"),
        fact("surfaces not covered", "cure,2026-02-10 08:40,surfaces covered,,one side only"),
        fact(
            "surface not tacky",
            "dry,2026-02-11 08:00,into drying,F2",
            "dry,2026-02-12 08:00,surface,,wet",
            "dry,2026-02-12 08:10,out of drying"),
        fact(
            "more than there is",
            "chill,2026-02-13 08:00,weight,,4000,g,MA,S-10",
            "dispatch,2026-02-14 08:00,packed,box 1,4200,g,MA,S-10"),
        fact(
            "chamber by hand and log disagree",
            bench ->
                bench.log(
                    "Air", "chamber temperature", "°F", "LG-A", SMOKER, "08:00..11:00/60 180"),
            "smoke,08:00,into smoke,SM",
            "smoke,10:00,chamber temperature,SM,60,°F",
            "smoke,11:00,out of smoke"),
        fact(
            "wet bulb warmer than its air",
            "smoke,08:00,into smoke,SM",
            "smoke,10:00,chamber temperature,SM,160,°F",
            "smoke,10:01,wet-bulb temperature,SM,170,°F",
            "smoke,11:00,out of smoke"),
        fact(
            "entered before it happened",
            "cure,2026-02-10 12:10,turned,,,,MA,,,,,,2026-02-10 11:10"));
  }

  private static final String SMOKER = "\"place\": \"SM\"";

  /** Beside a cure that was held cold. */
  private static Bad fact(String rule, String... rows) {
    return fact(rule, bench -> bench, rows);
  }

  private static Bad fact(String rule, UnaryOperator<Bench> more, String... rows) {
    return bad(rule, "cold", () -> more.apply(Suspects.cold("38.0", "38.4").write(rows)));
  }

  private static List<Bad> plans() {
    return List.of(
        planned("plan signed by nobody known", "\"signedBy\": \"MA\"", "\"signedBy\": \"ZZ\""),
        planned("plan not reassessed", "2027-01-05", "2026-01-31"),
        planned("instrument hardly checked", "\"tolerance\": \"2 °F\"", "\"tolerance\": \"20 °F\""),
        bad(
            "long time between steps",
            "cold",
            () -> Suspects.cold("38.0", "38.4").product("between", "\"5 h\"")));
  }

  private static Bad planned(String rule, String text, String now) {
    return bad(rule, "cold", () -> Suspects.cold("38.0", "38.4").planned(text, now));
  }

  private static List<Bad> instruments() {
    return List.of(
        bad("instrument not in force", "finish", () -> Suspects.read("2026-01-20 09:00", "32.0")),
        bad(
            "instrument failed its check",
            "finish",
            () -> Suspects.read("2026-02-20 09:00", "35.1")),
        new Bad(
            "explanation",
            Suspects.COOLING,
            () ->
                CoreLog.slow()
                    .hold("11:50", "18:01", 36.5)
                    .bench()
                    .write("actions,20:00,explained,probe moved p1-log.csv:999,,,MA,,nobody knows"),
            Naive.of(CoreLog.slow().hold("11:50", "18:01", 36.5).levels()).cools()));
  }

  @TestFactory
  Stream<DynamicTest> what_looks_good_does_not_with_the_rule_that_sees_it() {
    return BAD.stream().map(each -> DynamicTest.dynamicTest(each.rule(), each::test));
  }

  /** Each with a lot that it is printed beside, and the limit that it leaves as it is. */
  private static final Map<String, Map.Entry<String, Supplier<Bench>>> NOTES =
      Map.of(
          "gap",
              Map.entry(
                  Suspects.COOLING, () -> CoreLog.everyMinute().silent("13:00", "13:10").bench()),
          "lid open",
              Map.entry(
                  "finish",
                  () ->
                      Suspects.finished()
                          .log(
                              "Chamber",
                              "chamber temperature",
                              "°F",
                              "LG-A",
                              "\"place\": \"SM\"",
                              "08:00:00..08:59:00/60 199; 09:00:00..09:08:00/60 199>151;"
                                  + " 09:09:00..11:00:00/60 195")),
          "scale coarse for its load",
              Map.entry(
                  Suspects.NITRITE,
                  () ->
                      Suspects.cured("curing salt,C1,12,g,MA,S-R")
                          .write("cure,2026-02-10 08:20,accelerator,E,30,g,MA,S-10")),
          "entered together", Map.entry("turn", () -> Suspects.turned(16, "2026-02-16 12:00:00")),
          "late entry", Map.entry("turn", () -> Suspects.turned(11, "2026-02-11 09:00:00")),
          "same value again", Map.entry("cold", () -> Suspects.cold("36.2", "36.2")),
          "rounded readings", Map.entry("cold", () -> Suspects.cold("36.5", "37.0")));

  @TestFactory
  Stream<DynamicTest> a_note_is_printed_beside_a_verdict_and_leaves_it() {
    return NOTES.entrySet().stream()
        .map(
            each ->
                DynamicTest.dynamicTest(
                    each.getKey(),
                    () ->
                        noted(
                            each.getKey(), each.getValue().getKey(), each.getValue().getValue())));
  }

  private static void noted(String rule, String limit, Supplier<Bench> lot) {
    Judgement judged = judged(lot, Set.of(rule));
    assertEquals(Set.of(rule), faults(judged));
    assertTrue(looksGood(judged, limit), () -> told(judged, limit));
  }

  @Test
  void every_rule_is_shown() {
    Set<String> shown = new TreeSet<>(NOTES.keySet());
    BAD.forEach(each -> shown.add(each.rule()));
    assertEquals(new TreeSet<>(Bench.ruleNames()), shown);
  }
}
