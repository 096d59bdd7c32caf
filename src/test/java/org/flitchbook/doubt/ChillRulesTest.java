package org.flitchbook.doubt;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Set;
import java.util.stream.Collectors;
import org.flitchbook.check.Bench;
import org.flitchbook.check.CoreLog;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A chill that the air of its cooler can't have brought about, by logs and by hand. */
final class ChillRulesTest {

  private static final String COLDER = "core colder than its air was";
  private static final String FASTER = "chill faster than its air allows";
  private static final String BESIDE = "core falls beside warmer air";
  private static final Set<String> OWN = Set.of(COLDER, FASTER, BESIDE);

  private static String asked(Bench bench) {
    return bench.doubts().stream()
        .map(fault -> fault.rule())
        .filter(OWN::contains)
        .collect(Collectors.joining(", "));
  }

  private static Bench hands(String chill, String... rows) {
    Bench bench =
        Bench.book()
            .doubting()
            .write(
                "smoke,08:00:00,into smoke,SM",
                "smoke,11:00:00,out of smoke",
                "chill,11:30:00,into chill," + chill,
                "chill,18:00:00,out of chill");
    for (String row : rows) {
      String[] cells = row.split(" ", -1);
      boolean core = cells[1].equals("core");
      String what = core ? "internal temperature," : "cooler temperature," + chill;
      bench.write("chill," + cells[0] + "," + what + "," + cells[2] + ",°F");
    }
    return bench;
  }

  /** The core was 38 °F at 16:40 and 37 at 18:00 by LG-A, which may be 0.5 °F off. */
  @ParameterizedTest(name = "cooler {1} at {0} and {3} at {2}: {4}")
  @CsvSource({
    "12:30:00, 36, 17:30:00, 36, ''",
    "12:30:00, 60, 17:30:00, 36, ''",
    "12:30:00, 36, 17:30:00, 60, ''",
    "12:30:00, 42.5, 17:30:00, 42.5, ''",
    "12:30:00, 43, 17:30:00, 43, core colder than its air was",
    "12:30:00, 52, 17:30:00, 50, core colder than its air was",
    "12:30:00, 52, 14:00:00, 50, ''",
  })
  void a_logged_core_is_no_colder_than_the_coldest_air_read_by_hand(
      String first, String one, String second, String other, String asked) {
    Bench bench =
        CoreLog.everyMinute()
            .bench()
            .write(
                "chill," + first + ",cooler temperature,F2," + one + ",°F",
                "chill," + second + ",cooler temperature,F2," + other + ",°F");
    assertEquals(asked, asked(bench));
  }

  /** Where no log was kept: one thermometer in the core, one in the cooler. */
  @ParameterizedTest(name = "{0}, {1}: {2}")
  @CsvSource({
    "16:00:00 air 45, 17:00:00 core 40, ''",
    "16:00:00 air 45, 17:00:00 core 39.9, core colder than its air was",
    "18:00:00 air 45, 17:00:00 core 39.9, core colder than its air was",
    "15:59:59 air 45, 17:00:00 core 39.9, ''",
    "16:00:00 air 45, 11:29:00 core 39.9, ''",
    "16:00:00 core 50, 17:00:00 core 39.9, ''",
  })
  void a_core_read_by_hand_is_beside_its_cooler(String one, String other, String asked) {
    assertEquals(asked, asked(hands("F2", one, other)));
  }

  @Test
  void water_chills_otherwise_than_the_air_that_was_read_beside_it() {
    assertEquals(COLDER, asked(hands("F2", "16:30:00 air 45", "17:00:00 core 35")));
    assertEquals("", asked(hands("SK", "16:30:00 air 45", "17:00:00 core 35")));
    assertEquals(
        "", asked(hands("SK", "11:31:00 air 36", "11:35:00 core 136", "12:00:00 core 50")));
  }

  /** By hand, the core and the air around it. */
  @ParameterizedTest(name = "{0}, {1}, {2}, {3}: {4}")
  @CsvSource({
    "13:00 core 90, 13:01 air 100, 14:00 core 80, 14:01 air 100, core falls beside warmer air",
    "13:00 core 90, 13:01 air 95, 14:00 core 80, 14:01 air 95, ''",
    "13:00 core 90, 13:01 air 95.1, 14:00 core 84.9, 14:01 air 95.1, core falls beside warmer air",
    "13:00 core 90, 13:01 air 95.1, 14:00 core 85, 14:01 air 95.1, ''",
    "13:00 core 90, 13:01 air 100, 14:32 core 80, 14:31 air 100, ''",
    "13:00 core 90, 13:01 air 100, 14:00 core 80, 14:01 air 70, ''",
    "13:00 core 90, 13:01 air 70, 14:00 core 80, 14:01 air 100, ''",
  })
  void no_core_falls_beside_warmer_air(
      String core, String air, String laterCore, String laterAir, String asked) {
    assertEquals(asked, asked(hands("F2", "11:40 air 30", core, air, laterCore, laterAir)));
  }

  /** For less than 10 minutes a log may be wrong; a sensor, not the core. */
  @ParameterizedTest
  @CsvSource({"17:10, ''", "17:11, core colder than its air was"})
  void a_log_must_be_colder_for_some_minutes(String until, String asked) {
    Bench bench =
        CoreLog.everyMinute()
            .change("12:00", "18:01", x -> Math.max(x, 46))
            .change("17:00", until, x -> 41)
            .bench()
            .write("chill,17:00:00,cooler temperature,F2,47,°F");
    assertEquals(asked, asked(bench));
  }

  /** From 136 °F beside air of 36: 80 of 100 °F are allowed within half an hour. */
  @ParameterizedTest(name = "{0} °F at {1}: {2}")
  @CsvSource({
    "56, 12:05:00, ''",
    "55.9, 12:05:00, chill faster than its air allows",
    "55.9, 12:05:01, ''",
    "50, 11:50:00, chill faster than its air allows",
    "60, 11:50:00, ''",
  })
  void a_core_comes_to_the_air_as_fast_as_meat_can(String level, String at, String asked) {
    assertEquals(
        asked, asked(hands("F2", "11:31:00 air 36", "11:35:00 core 136", at + " core " + level)));
  }

  /** Near its air, a degree more or less is a large share of the way. */
  @ParameterizedTest
  @CsvSource({"55.9, 37, ''", "56, 37, chill faster than its air allows", "56, 40, ''"})
  void only_a_core_that_is_far_from_its_air_is_looked_at(String from, String to, String asked) {
    assertEquals(
        asked,
        asked(hands("F2", "11:31:00 air 36", "12:00:00 core " + from, "12:20:00 core " + to)));
  }

  /** A straight line of 1.7 °F a minute leaps nowhere, and no meat follows it down to 38 °F. */
  @Test
  void a_line_drawn_down_to_the_air_is_asked_about() {
    String cooler = "chill,11:31:00,cooler temperature,F2,36,°F";
    assertEquals("", asked(CoreLog.everyMinute().bench().write(cooler)));
    assertEquals(
        FASTER, asked(CoreLog.everyMinute().ramp("11:30", 60, 38, "18:01").bench().write(cooler)));
  }

  /** What another rule asks about the same readings is asked once. */
  @Test
  void a_leap_is_asked_about_by_its_own_rule_alone() {
    Bench bench = CoreLog.everyMinute().hold("12:00", "18:01", 37).inAir();
    assertEquals("", asked(bench));
  }
}
