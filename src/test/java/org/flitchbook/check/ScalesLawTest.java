package org.flitchbook.check;

import static org.flitchbook.check.Said.reasons;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.flitchbook.SeededRun;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** A copy of a log in the other scale is judged alike, with the limit in either. */
final class ScalesLawTest {

  private static final long SEED = 20260301;
  private static final int LOTS = SeededRun.cases("Logs in two scales", SEED, 150);
  private static final List<String> UNITS = List.of("°C", "°F");
  private static final String CORE = "\"what\": \"internal temperature\", ";
  private static final String PEAK =
      "\"kind\": \"floor\", \"quantity\": \"peak internal temperature\", \"atLeast\": ";
  private static final String HOLDING =
      "\"kind\": \"holding\", " + CORE + "\"every\": \"61 min\", ";
  private static final Map<String, String> LIMITS = new LinkedHashMap<>();

  static {
    String span = "\"kind\": \"span\", " + CORE;
    LIMITS.put("chill fall", span + "\"from\": {60}, \"to\": {10}, \"atMost\": \"60 min\"");
    LIMITS.put("chill fall-to-5", span + "\"from\": {70}, \"to\": {5}, \"atMost\": \"80 min\"");
    LIMITS.put("smoke rise", span + "\"from\": {10}, \"to\": {60}, \"atMost\": \"30 min\"");
    LIMITS.put("chill cold", HOLDING + "\"atMost\": {5}, \"allow\": \"75 min\"");
    LIMITS.put("smoke hot", HOLDING + "\"atLeast\": {60}, \"allow\": \"40 min\"");
    LIMITS.put("smoke table", table("{\"atLeast\": {60}, \"for\": \"10 min\"}"));
    LIMITS.put("smoke at-once", table("{\"atLeast\": {70}, \"for\": \"0 s\"}"));
    LIMITS.put("smoke peak", PEAK + "{70}");
  }

  private static String table(String rows) {
    return "\"kind\": \"time-at-temperature\", " + CORE + "\"rows\": [" + rows + "]";
  }

  private static Bench smoked(String until) {
    return Bench.book()
        .write(
            "smoke,08:00:00,into smoke,SM",
            "smoke," + until + ",out of smoke",
            "chill," + until + ",into chill,F2",
            "chill,11:00:00,out of chill");
  }

  private static Bench withBoth(Bench bench) {
    LIMITS.forEach(
        (name, numbers) -> {
          String[] parts = name.split(" ", -1);
          for (String unit : UNITS) {
            bench.own(parts[1] + unit.charAt(1), parts[0], Celsius.limit(numbers, unit));
          }
        });
    return bench;
  }

  private static Judgement judged(long seed, String unit) {
    SplittableRandom random = new SplittableRandom(seed);
    Bench bench = withBoth(smoked(Celsius.clock(60L * (20 + random.nextInt(60)))));
    Celsius core = Celsius.random(random);
    String logger = random.nextBoolean() ? "LG-0" : "LG-A";
    String hand = random.nextBoolean() ? "HT-0" : "HT-1";
    bench.log("P1", "internal temperature", unit, logger, "\"lot\": \"A1\"", core.log(unit));
    long[] near = core.points().get(random.nextInt(core.points().size()));
    String level = Celsius.degrees(near[1], unit);
    bench.write(
        "chill,%s,internal temperature,thickest,%s,%s,MA,%s"
            .formatted(Celsius.clock(near[0]), level, unit, hand));
    return bench.temperature(unit).judge();
  }

  @Test
  void a_copy_in_the_other_scale_gets_the_same_verdicts() {
    Set<String> seen = new HashSet<>();
    for (long seed = SEED; seed < SEED + LOTS; seed++) {
      Judgement celsius = judged(seed, "°C");
      Judgement fahrenheit = judged(seed, "°F");
      for (String name : LIMITS.keySet()) {
        String id = name.substring(name.indexOf(' ') + 1);
        String message = id + " in the lot of seed " + seed;
        Finding first = Bench.found(celsius, id + "C");
        same(message + ", limit in °F", first, Bench.found(celsius, id + "F"));
        same(message + ", log in °F", first, Bench.found(fahrenheit, id + "C"));
        same(message + ", both in °F", first, Bench.found(fahrenheit, id + "F"));
        seen.add(id + " " + first.verdict().words());
      }
    }
    List<String> oneSided =
        LIMITS.keySet().stream()
            .map(name -> name.substring(name.indexOf(' ') + 1))
            .filter(id -> !seen.containsAll(List.of(id + " met", id + " not met")))
            .toList();
    assertEquals(
        SeededRun.known(List.of("fall-to-5", "cold"), List.of()), oneSided, seen.toString());
  }

  /** Else the law would prove nothing. */
  @Test
  void a_log_read_in_the_wrong_scale_is_noticed() {
    Finding celsius = Bench.found(judged(SEED, "°C"), "peakC");
    Finding other = Bench.found(judged(SEED + 1, "°F"), "peakC");
    assertThrows(AssertionError.class, () -> same("planted", celsius, other));
  }

  private static void same(String message, Finding one, Finding other) {
    assertEquals(one.verdict(), other.verdict(), message + ": " + reasons(other));
    assertEquals(one.measured().isPresent(), other.measured().isPresent(), message);
    if (one.measured().isPresent()) {
      int apart = one.measured().get().value().compareTo(other.measured().get().value());
      assertEquals(0, apart, message + ": " + other.measured().get().value());
    }
  }

  /** Each limit at 5, 10, 60 and 70 °C, which are 41, 50, 140 and 158 °F, by both units. */
  static Stream<Arguments> edges() {
    return Stream.of(50L, 100L, 600L, 700L)
        .flatMap(
            edge ->
                UNITS.stream()
                    .flatMap(log -> UNITS.stream().map(limit -> Arguments.of(edge, log, limit))));
  }

  private static String verdict(
      String step, String numbers, String limitUnit, Celsius core, String logUnit) {
    Bench bench = smoked("10:00:00").own("edge", step, Celsius.limit(numbers, limitUnit));
    bench.log("P1", "internal temperature", logUnit, "LG-0", "\"lot\": \"A1\"", core.log(logUnit));
    return bench.finding("edge").verdict().words();
  }

  @ParameterizedTest(name = "{0} tenths of a °C, log in {1}, limit in {2}")
  @MethodSource("edges")
  void at_the_edge_it_is_met_and_a_tenth_beyond_it_is_not(long edge, String log, String limit) {
    String degrees = "{" + edge / 10 + "}";
    String most = HOLDING + "\"atMost\": " + degrees;
    String least = HOLDING + "\"atLeast\": " + degrees;
    String table = table("{\"atLeast\": " + degrees + ", \"for\": \"120 min\"}");
    Celsius at = Celsius.empty().line(0, 10_800, edge, edge);
    Celsius above = Celsius.empty().line(0, 10_800, edge + 1, edge + 1);
    Celsius below = Celsius.empty().line(0, 10_800, edge - 1, edge - 1);
    for (String met : List.of(most, least, table, PEAK + degrees)) {
      assertEquals("met", verdict("smoke", met, limit, at, log), met);
      String missed = verdict("smoke", met, limit, met.equals(most) ? above : below, log);
      assertEquals("not met", missed, met);
    }
  }

  @ParameterizedTest(name = "to {0} tenths of a °C, log in {1}, limit in {2}")
  @MethodSource("edges")
  void a_fall_that_ends_on_the_edge_in_time_is_met(long edge, String log, String limit) {
    long top = edge == 50 ? 100 : edge == 100 ? 600 : 700;
    long foot = edge == 700 ? 600 : edge;
    String span =
        "\"kind\": \"span\", %s\"from\": {%d}, \"to\": {%d}, \"atMost\": \"60 min\""
            .formatted(CORE, top / 10, foot / 10);
    Celsius in = fall(top, foot).at(7200, foot).at(7260, foot - 10);
    Celsius late = fall(top, foot).at(7200, foot + 1).at(7201, foot).at(7260, foot - 10);
    assertEquals("met", verdict("chill", span, limit, in, log));
    assertEquals("not met", verdict("chill", span, limit, late, log));
  }

  /** To 09:00:00 it is at or above the top, at 09:59:00 a tenth above the foot. */
  private static Celsius fall(long top, long foot) {
    Celsius core = Celsius.empty().line(0, 3540, 10, top + 10).at(3600, top);
    return core.line(3660, 7140, top - 1, foot + 1);
  }
}
