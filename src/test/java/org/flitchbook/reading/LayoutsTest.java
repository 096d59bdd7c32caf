package org.flitchbook.reading;

import static org.flitchbook.reading.Days.file;
import static org.flitchbook.reading.Days.said;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** What {@code logs.json} may not say. */
final class LayoutsTest {

  private static final String GOOD =
      """
      {"logs": [{
        "files": "p*.csv", "skip": 0,
        "instrument": "LG-A",
        "time": {"column": "Time", "pattern": "yyyy-MM-dd HH:mm:ss", "zone": "America/New_York"},
        "columns": [
          {"column": "P1", "what": "internal temperature", "unit": "°F", "lot": "A1"}
        ]
      }]}
      """;
  private static final String LOG = "Time,P1\n2026-02-24 08:02:00,39.2\n";

  private static Day read(String layout) {
    return Days.read(Days.NEW_YORK, file("logs.json", layout), file("p1.csv", LOG));
  }

  private static Arguments row(String good, String bad, String... said) {
    return Arguments.of(good, bad, List.of(said));
  }

  static Stream<Arguments> refusals() {
    String whats =
        "internal temperature, water temperature, chamber temperature, wet-bulb temperature,"
            + " cooler temperature or humidity";
    String column = "broken logs.json:6:logs[0].columns[0].";
    return Stream.of(
        row(
            "\"skip\": 0",
            "\"skip\": -1",
            "broken logs.json:2:logs[0].skip: found -1, expected 0 or more"),
        row(
            "\"skip\": 0",
            "\"skip\": \"0\"",
            "broken logs.json:2:logs[0].skip: found \"0\", expected a whole number"),
        row(
            "\"skip\": 0",
            "\"encoding\": \"ebcdic\"",
            "broken logs.json:2:logs[0].encoding: found \"ebcdic\", expected utf-8, utf-16,"
                + " utf-16le, utf-16be, windows-1252 or iso-8859-1"),
        row(
            "\"skip\": 0",
            "\"delimiter\": \"|\"",
            "broken logs.json:2:logs[0].delimiter: found \"|\", expected \",\", \";\" or a tab"),
        row(
            "\"skip\": 0",
            "\"decimal\": \"'\"",
            "broken logs.json:2:logs[0].decimal: found \"'\", expected \".\" or \",\""),
        row(
            "\"skip\"",
            "\"skips\"",
            "broken logs.json:2:logs[0].skips: found the key \"skips\", expected one of files,"
                + " encoding, delimiter, decimal, skip, heading, time, instrument, columns,"
                + " leftOut"),
        row(
            "\"instrument\": \"LG-A\",",
            "",
            "broken logs.json:1:logs[0].instrument: found no \"instrument\", expected a text"
                + " there"),
        row(
            "America/New_York",
            "Wrenfold",
            "broken logs.json:4:logs[0].time.zone: found \"Wrenfold\", expected a zone such as"
                + " America/New_York"),
        row(
            "mm:ss\", \"zone\": \"America/New_York\"",
            "mm:ss {\"",
            "broken logs.json:4:logs[0].time.zone: found no \"zone\", expected a zone such as"
                + " America/New_York there",
            "broken logs.json:4:logs[0].time.pattern: found \"yyyy-MM-dd HH:mm:ss {\", expected a"
                + " date and time such as yyyy-MM-dd HH:mm:ss"),
        row(
            "\"column\": \"Time\"",
            "\"columns\": []",
            "broken logs.json:4:logs[0].time.columns: found a list of 0, expected 1 or more"),
        row(
            "\"lot\": \"A1\"",
            "\"item\": \"x\"",
            column + "lot: found neither, expected either a lot or a place"),
        row(
            "\"lot\": \"A1\"",
            "\"lot\": \"A1\", \"place\": \"F1\"",
            column + "lot: found both, expected either a lot or a place"),
        row(
            "\"lot\": \"A1\"",
            "\"place\": \"F1\"",
            column
                + "place: found an internal temperature of a place, expected the lot that the probe"
                + " sat in"),
        row(
            "\"what\": \"internal temperature\", \"unit\": \"°F\", \"lot\": \"A1\"",
            "\"what\": \"humidity\", \"unit\": \"%\", \"place\": \"F1\", \"continues\": \"P1\"",
            column + "continues: found \"P1\", expected no such key beside humidity"),
        row(
            "\"lot\": \"A1\"",
            "\"lots\": [\"A1\", \"B2\"], \"piece\": \"a\"",
            column
                + "piece: found \"a\", expected one of the column's lots, and its piece behind a"
                + " space"),
        row(
            "\"lot\": \"A1\"",
            "\"lot\": \"A1\", \"from\": \"8:02\"",
            column + "from: found \"8:02\", expected a date and time such as 2026-02-24 11:08:00"),
        row(
            "\"lot\": \"A1\"",
            "\"lot\": \"A1\", \"from\": \"2026-02-24 09:00\", \"until\": \"2026-02-24 08:00\"",
            column + "until: found 2026-02-24 08:00, expected a time behind \"from\""),
        row(
            "internal temperature",
            "green weight",
            column + "what: found \"green weight\", expected " + whats),
        row(
            "internal temperature",
            "ice point",
            column + "what: found \"ice point\", expected " + whats),
        row("internal temperature", "warmth", column + "what: found \"warmth\", expected " + whats),
        row("\"°F\"", "\"K\"", column + "unit: found \"K\", expected °F, °C or %"),
        row("\"°F\"", "\"%\"", column + "unit: found %, expected a unit of internal temperature"),
        row(
            "{\"column\": \"P1\", \"what\": \"internal temperature\", \"unit\": \"°F\", \"lot\":"
                + " \"A1\"}",
            "",
            "broken logs.json:5:logs[0].columns: found a list of 0, expected 1 or more of column,"
                + " what, unit, item, lot, lots, place, piece, continues, from,"
                + " until"),
        row(
            "\"logs\"",
            "\"log\"",
            "broken logs.json:1:logs: found no \"logs\", expected a list there",
            "broken logs.json:1:log: found the key \"log\", expected one of logs"));
  }

  @ParameterizedTest(name = "{2}")
  @MethodSource("refusals")
  void a_layout_that_leaves_something_open_is_broken(String good, String bad, List<String> said) {
    assertEquals(List.of(), said(read(GOOD)));
    List<String> found = said(read(GOOD.replace(good, bad)));
    assertEquals(said, found.stream().filter(fault -> fault.startsWith("broken")).toList());
  }

  @Test
  void every_fault_of_a_layout_is_found() {
    String bad =
        GOOD.replace("\"files\": \"p*.csv\", ", "")
            .replace("America/New_York", "x")
            .replace("°F", "g")
            .replace("\"lot\"", "\"lots\"");
    assertEquals(
        List.of(
            "logs[0].files",
            "logs[0].time.zone",
            "logs[0].columns[0].unit",
            "logs[0].columns[0].lots",
            "logs[0].columns[0].lot"),
        read(bad).faults().stream()
            .filter(fault -> fault.is(org.flitchbook.input.Severity.BROKEN))
            .map(fault -> fault.place().column())
            .toList());
  }

  @Test
  void a_file_that_two_layouts_name_is_broken() {
    String entry = GOOD.substring(GOOD.indexOf('[') + 1, GOOD.lastIndexOf(']')).strip();
    String twice = GOOD.replace(entry, entry + ",\n" + entry.replace("p*.csv", "*1.csv"));
    assertEquals(
        List.of(
            "broken logs.json:9:logs[1]: found p1.csv, which logs[0] names too, expected one entry"
                + " for each file"),
        said(read(twice)));
  }

  @Test
  void a_glob_that_fits_sheets_alone_finds_no_log() {
    Day day =
        Days.read(
            Days.NEW_YORK,
            file("logs.json", GOOD.replace("p*.csv", "*")),
            file("cure.csv", Days.HEAD));
    assertEquals(
        List.of(
            "note cure.csv:1: found a heading alone, expected rows under the heading",
            "ask logs.json:1:logs[0]: found no file called *, expected the log that this entry"
                + " describes"),
        said(day));
  }

  @Test
  void a_column_that_stands_twice_in_a_log_is_broken() {
    Day day =
        Days.read(
            Days.NEW_YORK,
            file("logs.json", GOOD),
            file("p1.csv", "Time,P1,P1\n2026-02-24 08:02:00,1,2\n"));
    assertEquals(
        List.of("broken p1.csv:1:P1: found the column \"P1\" twice, expected each column once"),
        said(day));
  }

  @Test
  void a_log_without_its_time_column_tells_that_and_not_every_row() {
    Day day =
        Days.read(
            Days.NEW_YORK, file("logs.json", GOOD), file("p1.csv", LOG.replace("Time", "Clock")));
    assertEquals(
        List.of(
            "broken p1.csv:1:Time: found no column \"Time\" in Clock, P1, expected the columns that"
                + " logs.json names"),
        said(day));
  }

  @Test
  void a_bare_decimal_comma_in_a_comma_log_is_told() {
    for (String heading : List.of("Time,P1,P2\n", "Time,P1,P2,,\n")) {
      Day day =
          Days.read(
              Days.NEW_YORK,
              file("logs.json", GOOD),
              file("p1.csv", heading + "2026-02-24 08:02:00,39,2,76,9\n"));
      assertEquals(
          List.of(
              "stop p1.csv:2: found 2026-02-24 08:02:00, 39, 2, 76, 9, expected no filled cell"
                  + " under no word of the heading; a decimal comma can't stand bare in a comma"
                  + " file"),
          said(day));
      assertEquals(0, day.series().get(0).samples().size());
    }
  }

  @Test
  void a_row_outside_of_every_from_and_until_is_noted() {
    String until =
        GOOD.replace("\"lot\": \"A1\"", "\"lot\": \"A1\", \"until\": \"2026-02-24 08:01\"");
    assertEquals(
        List.of(
            "note p1.csv:2:Time: found 2026-02-24 08:02:00, expected a time that a \"from\" and"
                + " \"until\" of logs.json holds"),
        said(read(until)));
  }
}
