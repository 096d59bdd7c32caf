package org.flitchbook.check;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.input.Stretch;
import org.flitchbook.message.Message;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A doubt takes away what rests on the doubtful reading, and nothing else. */
final class DependencyTest {

  private static final String TABLE = "us.a21.table-2.lethality-6.5";
  private static final String DAY = "2026-02-24/";

  private static Bench smoked(String limit) {
    return Bench.book()
        .product("cut", "\"loin\"")
        .product("class", "\"fully cooked, not shelf stable\"")
        .rule(limit)
        .write(
            "smoke,08:00:00,into smoke,SM",
            "smoke,12:00:00,out of smoke",
            "chill,12:05,into chill,F2");
  }

  private static String verdict(Bench bench, String limit, Fault fault) {
    return Bench.found(bench.judge(List.of(fault)), limit).verdict().words();
  }

  private static Fault ask(String file, int line, String column) {
    return Fault.ask(
        "stuck", "A1", new Place(DAY + file, line, column), Message.of("a"), Message.of("b"));
  }

  private static Fault over(String file, String from, String until) {
    Place origin = new Place(DAY + file, 0, "P1");
    return ask(file, 1, "P1")
        .over(
            new Stretch(
                origin,
                Bench.instant(DAY.substring(0, 10) + " " + from),
                Bench.instant(DAY.substring(0, 10) + " " + until),
                Stretch.Standing.SILENCE));
  }

  /** The run of a row lasts from 09:00 to 09:04. */
  @ParameterizedTest(name = "from {0} to {1}: {2}")
  @CsvSource({
    "09:01:00, 09:02:00, not shown",
    "09:04:00, 09:10:00, not shown",
    "08:50:00, 09:00:00, not shown",
    "09:05:00, 09:10:00, met",
    "08:00:00, 08:59:59, met",
  })
  void a_stretch_in_doubt_touches_the_run_that_holds_some_of_it(
      String from, String until, String verdict) {
    Bench bench =
        smoked(TABLE)
            .core(
                "P1",
                "LG-0",
                "08:00:00..08:59:00/60 40>110; 09:00:00..09:04:00/60 145; 09:05:00 90");
    assertEquals(verdict, verdict(bench, TABLE, over("p1-log.csv", from, until)));
    assertEquals("met", verdict(bench, TABLE, over("p2-log.csv", from, until)));
  }

  /** The log falls silent at 09:02; a hand reading at 09:05, line 4 of the sheet, ends the run. */
  @ParameterizedTest(name = "{0}:{1}:{2}: {3}")
  @CsvSource({
    "p1-log.csv, 70, P1, not shown",
    "p1-log.csv, 0,  '', not shown",
    "p1-log.csv, 70, P9, met",
    "p2-log.csv, 70, P1, met",
    "smoke.csv,  4,  '', not shown",
    "smoke.csv,  4,  value, not shown",
    "smoke.csv,  0,  '', not shown",
    "smoke.csv,  2,  '', met",
    "smoke.csv,  2,  P1, met",
    "smoke.csv,  3,  value, met",
  })
  void a_line_in_doubt_touches_what_was_read_there(
      String file, int line, String column, String verdict) {
    Bench bench =
        smoked(TABLE)
            .write("smoke,09:05:00,internal temperature,,145,°F")
            .core(
                "P1",
                "LG-0",
                "08:00:00..08:59:00/60 40>110; 09:00:00..09:02:00/60 145; 09:20:00..09:30:00/60"
                    + " 90");
    assertEquals(verdict, verdict(bench, TABLE, ask(file, line, column)));
  }

  /** Beside a log that goes on a hand reading bears nothing. */
  @Test
  void a_hand_reading_that_does_not_stand_bears_nothing() {
    Bench bench =
        smoked(TABLE)
            .write("smoke,09:02:30,internal temperature,,146,°F")
            .core(
                "P1",
                "LG-0",
                "08:00:00..08:59:00/60 40>110; 09:00:00..09:10:00/60 145; 09:11:00..09:30:00/60"
                    + " 90");
    assertEquals("met", verdict(bench, TABLE, ask("smoke.csv", 4, "")));
  }

  /** Without a log each line stands by itself: 158 °F at lines 5 and 6 serves. */
  @ParameterizedTest
  @CsvSource({"4, met", "5, not shown", "6, not shown", "7, met"})
  void hand_readings_alone_rest_on_their_own_lines(int line, String verdict) {
    Bench bench =
        smoked(TABLE)
            .write(
                "smoke,08:30:00,internal temperature,,100,°F",
                "smoke,09:00:00,internal temperature,,158,°F",
                "smoke,09:02:00,internal temperature,,158,°F",
                "smoke,09:30:00,internal temperature,,120,°F");
    assertEquals(verdict, verdict(bench, TABLE, ask("smoke.csv", line, "")));
  }

  /** A log in two parts: the run lies in the second. */
  @ParameterizedTest
  @CsvSource({"p1-log.csv, not shown", "p1-more.csv, not shown", "p1-none.csv, met"})
  void each_file_of_a_log_bears_what_was_read_of_it(String file, String verdict) {
    String layout =
        """
        {"files": "p1-more.csv", "instrument": "LG-0",
         "time": {"column": "Time", "pattern": "%s", "zone": "America/New_York"},
         "columns": [{"column": "P1", "what": "internal temperature", "unit": "°F", "item": "P1", "lot": "A1"}]}\
        """;
    Log more = Log.of("09:00:00..09:10:00/60 145; 09:11:00 90");
    Bench bench =
        smoked(TABLE)
            .core("P1", "LG-0", "08:00:00..08:59:00/60 40>110")
            .file("p1-more.csv", more.csv("P1"), layout.formatted(more.pattern()));
    assertEquals(verdict, verdict(bench, TABLE, ask(file, 3, "P1")));
  }

  /** Turned at lines 4 to 6; the longest pause lies between the last two. */
  @ParameterizedTest
  @CsvSource({"4, not shown", "5, not shown", "6, not shown", "7, met"})
  void a_cadence_rests_on_every_entry_of_it(int line, String verdict) {
    Bench bench =
        Bench.book()
            .own("turns", "cure", "\"kind\": \"cadence\", \"what\": \"turned\", \"every\": \"3 h\"")
            .write(
                "cure,07:00:00,into cure,F1",
                "cure,08:00:00,turned",
                "cure,10:00:00,turned",
                "cure,12:30:00,turned",
                "cure,13:00:00,salt,,150,g",
                "cure,13:30:00,out of cure");
    assertEquals(verdict, verdict(bench, "turns", ask("cure.csv", line, "")));
  }

  /** Option 1 wants 145 °F inside: it rests on the core too. Option 3 does not. */
  @ParameterizedTest(name = "{0}: {1}")
  @CsvSource({"steam, not shown", "humidity, met"})
  void an_option_with_an_endpoint_rests_on_the_core(String by, String verdict) {
    String humidity = "us.a21.table-1.humidity";
    Bench bench =
        smoked(humidity)
            .core("P1", "LG-0", "08:00:00..10:00:00/60 40>150; 10:01:00..12:00:00/60 140");
    if (by.equals("steam")) {
      bench.write("smoke,08:00:00,steam,,on", "smoke,11:00:00,steam,,off");
    } else {
      bench.log(
          "RH",
          "humidity",
          "%",
          "LG-H",
          "\"place\": \"SM\"",
          "08:00:00..10:00:00/60 95; 12:30:00 50");
    }
    assertEquals(verdict, verdict(bench, humidity, ask("p1-log.csv", 0, "P1")));
  }
}
