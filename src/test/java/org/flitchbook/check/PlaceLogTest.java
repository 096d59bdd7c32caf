package org.flitchbook.check;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Locale;
import java.util.TreeSet;
import java.util.function.IntFunction;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.flitchbook.input.Severity;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * A lot that cures for ten hours in a fridge whose log has a reading each minute, between two by
 * hand. A warm reading must show, however it is written; want of one must break the coverage.
 */
final class PlaceLogTest {

  private static final int FROM = 200;
  private static final String LIMIT = "cold";

  /** As cold as it should be, but for some minutes. */
  private static Bench fridge(int minutes, IntFunction<String> cell) {
    return fridge("°F", minutes, cell);
  }

  private static Bench fridge(String unit, int minutes, IntFunction<String> cell) {
    String rows =
        IntStream.rangeClosed(0, 600)
            .mapToObj(
                i ->
                    String.format(
                        Locale.ROOT,
                        "2026-02-24 %02d:%02d:00,%s\n",
                        8 + i / 60,
                        i % 60,
                        i >= FROM && i < FROM + minutes
                            ? cell.apply(i)
                            : unit.equals("°F") ? "38." + i % 7 : "3." + i % 7))
            .collect(Collectors.joining());
    return book(unit, "", "Time,Air\n" + rows);
  }

  private static Bench book(String unit, String more, String log) {
    return Bench.book()
        .doubting()
        .own(
            LIMIT,
            "cure",
            "\"kind\": \"holding\", \"what\": \"cooler temperature\", \"atMost\": \"41 °F\","
                + " \"every\": \"4 h\"")
        .write(
            "cure,08:00:00,into cure,F1",
            "cure,08:01:00,cooler temperature,F1,38.3,°F",
            "cure,17:59:00,cooler temperature,F1,38.3,°F",
            "cure,18:00:00,out of cure")
        .file(
            "fridge.csv",
            log,
            """
            {"files": "fridge.csv", "instrument": "LG-A", %s
             "time": {"column": "Time", "pattern": "yyyy-MM-dd HH:mm:ss", "zone": "America/New_York"},
             "columns": [{"column": "Air", "what": "cooler temperature", "unit": "%s", "place": "F1"}]}\
            """
                .formatted(more, unit));
  }

  /** The verdict, and the rules of what is open or noted, but for the gap that each leaves. */
  private static String said(Bench bench) {
    Judgement judged = bench.judge();
    TreeSet<String> rules = new TreeSet<>();
    judged.faults().stream()
        .filter(fault -> !fault.rule().equals("gap"))
        .forEach(fault -> rules.add(fault.severity().word() + " " + fault.rule()));
    return Bench.found(judged, LIMIT).verdict().words()
        + rules.stream().map(rule -> ", " + rule).collect(Collectors.joining());
  }

  @Test
  void a_cold_fridge_is_met() {
    assertEquals("met", said(fridge(0, i -> "")));
    assertEquals("met", said(fridge("°C", 0, i -> "")));
  }

  @ParameterizedTest
  @ValueSource(strings = {"58.0", "58.0 °F", "58.0 F", "5.8e1", "58."})
  void a_warm_reading_is_read(String cell) {
    assertEquals("not met", said(fridge(180, i -> cell)));
    assertEquals("not met", said(fridge(1, i -> cell)));
  }

  /** As programs write floats; the logger's error of half a degree counts beside the reading. */
  @ParameterizedTest
  @CsvSource({
    "41.00000000000001, not met",
    "41, not shown",
    "40.50000000000001, not shown",
    "40.5, met",
    "40.49999999999999, met",
    "38.15000152587890625, met",
  })
  void a_float_counts_as_exactly_as_it_is_written(String cell, String verdict) {
    assertEquals(verdict, said(fridge(60, i -> cell)));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"HI", ">60", "OVER", "~58", "58.0*", "58;0", "58.0 ALARM", "14.4 °C", "\"58,0\""})
  void a_reading_that_cannot_be_read_is_a_stop(String cell) {
    String rule = cell.contains("°C") ? "unit" : "value";
    assertEquals("not shown, stop " + rule, said(fridge(180, i -> cell)));
    assertEquals("not shown, stop " + rule, said(fridge(1, i -> cell)));
  }

  @Test
  void a_word_that_nobody_knows_is_asked_about() {
    assertEquals("not shown, ask no value", said(fridge(180, i -> "warm")));
  }

  /** Shorter than the plan wants a reading it is a note; longer, nobody saw the fridge. */
  @ParameterizedTest
  @CsvSource({
    "ERR, 230, 'met, note no value'",
    "ERR, 250, 'not shown, note no value'",
    "---, 230, 'met, note no value'",
    "---, 250, 'not shown, note no value'",
    "'', 230, met",
    "'', 250, not shown",
    "-127, 230, 'met, note error value'",
    "-127, 250, 'not shown, note error value'",
  })
  void want_of_a_reading_breaks_the_coverage(String cell, int minutes, String said) {
    assertEquals(said, said(fridge(minutes, i -> cell)));
  }

  @Test
  void a_fridge_of_which_no_number_was_read_is_a_stop() {
    assertEquals(
        "not shown, note no value, stop place without a reading",
        said(book("°F", "", fridgeOf("ERR"))));
    assertEquals("not shown, stop place without a reading", said(book("°F", "", fridgeOf(""))));
  }

  private static String fridgeOf(String cell) {
    return "Time,Air\n"
        + IntStream.range(8, 18)
            .mapToObj(hour -> String.format(Locale.ROOT, "2026-02-24 %02d:30:00,%s\n", hour, cell))
            .collect(Collectors.joining());
  }

  @Test
  void warm_readings_under_skip_are_a_stop() {
    String log =
        "Time,Air\n2026-02-24 08:02:00,58.0\n2026-02-24 08:03:00,58.0\n" + fridgeOf("38.1");
    assertEquals("not met, note heading again", said(book("°F", "", log)));
    assertEquals("not shown, stop skipped reading", said(book("°F", "\"skip\": 3,", log)));
  }

  /** What no fridge, smoker or water can be, and what sensors and loggers write for that. */
  @ParameterizedTest
  @CsvSource({
    "°C, -273.2",
    "°C, -273.15",
    "°C, -273",
    "°C, -242.02",
    "°C, -242",
    "°C, -200",
    "°C, -99.9",
    "°C, -888.88",
    "°C, -999",
    "°C, -999.9",
    "°C, -9999",
    "°C, -327.68",
    "°F, -459.67",
    "°F, -196.6",
    "°F, -99.9",
    "°F, -999",
    "°F, -9999",
    "°F, 999.9",
    "°C, 6553.5",
  })
  void a_code_of_a_sensor_breaks_the_coverage(String unit, String code) {
    assertEquals("met, note error value", said(fridge(unit, 230, i -> code)));
    assertEquals("not shown, note error value", said(fridge(unit, 250, i -> code)));
  }

  @ParameterizedTest
  @CsvSource({"-60.1, impossible air or water", "-60, place too cold", "24.9, place too cold"})
  void impossible_cold_is_asked_about(String level, String rule) {
    assertEquals("not shown, ask " + rule, said(fridge(180, i -> level)));
  }

  /** A log to the minute has several readings of one time. */
  @Test
  void a_warm_reading_of_the_same_time_as_a_code_counts() {
    for (String second : new String[] {"58.0", "-127"}) {
      String first = second.equals("58.0") ? "-127" : "58.0";
      String log =
          fridgeOf("38.1")
              .replace(
                  "2026-02-24 12:30:00,38.1\n",
                  "2026-02-24 12:30:00," + first + "\n2026-02-24 12:30:00," + second + "\n");
      Judgement judged = book("°F", "", log).judge();
      assertEquals(Verdict.NOT_MET, Bench.found(judged, LIMIT).verdict());
      assertEquals(0, judged.faults().stream().filter(fault -> fault.is(Severity.STOP)).count());
    }
  }

  /** The log reads every minute; of several gaps the longest is noted. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "4 | ''   | ",
        "5 | ''   | no reading of Air from 11:19 to 11:25 (6 min)",
        "5 | ERR  | no reading of Air from 11:19 to 11:25 (6 min)",
        "230 | '' | no reading of Air from 11:19 to 15:10 (231 min)",
        "230 | -127 | no reading of Air from 11:19 to 15:10 (231 min)",
      })
  void a_gap_in_the_log_of_a_place_is_noted(int minutes, String cell, String said) {
    assertEquals(said == null ? "" : said, gaps(fridge(minutes, i -> cell)));
  }

  @Test
  void of_several_gaps_the_longest_is_noted() {
    assertEquals(
        "no reading of Air from 11:40 to 12:20 (40 min, the longest of 2)",
        gaps(fridge(60, i -> i == FROM + 20 ? "38.0" : "")));
  }

  private static String gaps(Bench bench) {
    return bench.judge().faults().stream()
        .filter(fault -> fault.rule().equals("gap"))
        .map(fault -> fault.found().toString())
        .collect(Collectors.joining(", "));
  }
}
