package org.flitchbook.reading;

import static java.nio.charset.StandardCharsets.UTF_16LE;
import static org.flitchbook.reading.Days.file;
import static org.flitchbook.reading.Days.said;
import static org.flitchbook.reading.Days.samples;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.charset.Charset;
import java.util.List;
import java.util.stream.Stream;
import org.flitchbook.input.SourceFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

final class LogsTest {

  private static final String CORE =
      "{\"column\": \"P1\", \"what\": \"internal temperature\", \"unit\": \"°F\", \"lot\": \"A1\","
          + " \"item\": \"probe 1\"}";
  private static final String TIME =
      "\"time\": {\"column\": \"Time\", \"pattern\": \"yyyy-MM-dd HH:mm:ss\", \"zone\":"
          + " \"America/New_York\"}";

  private static String layout(String more, String time, String... columns) {
    return "{\"logs\": [{\"files\": \"p*.csv\", \"instrument\": \"LG-A\", "
        + (more.isEmpty() ? "" : more + ", ")
        + time
        + ", \"columns\": ["
        + String.join(", ", columns)
        + "]}]}";
  }

  private static Day read(String layout, String log) {
    return Days.read(Days.NEW_YORK, file("logs.json", layout), file("p1.csv", log));
  }

  /** A log of one column P1 with these rows. */
  private static Day rows(String... rows) {
    return read(layout("", TIME, CORE), "Time,P1\n" + String.join("\n", rows) + "\n");
  }

  private static String pattern(String pattern) {
    return TIME.replace("yyyy-MM-dd HH:mm:ss", pattern);
  }

  @Test
  void a_series_knows_what_it_is_and_where_each_reading_stands() {
    Day day = rows("2026-02-24 08:02:00,39.2", "2026-02-24 08:03:30,39.70");
    assertEquals(List.of(), said(day));
    Series series = day.series().get(0);
    assertEquals("2026-02-24/p1.csv P1", series.file() + " " + series.column());
    assertEquals(
        "probe 1 LG-A °F", series.called() + " " + series.instrument() + " " + series.unit());
    assertEquals(List.of("A1"), series.lots());
    assertEquals(0, series.precisionMillis());
    assertEquals(
        List.of("2: 2026-02-24T13:02:00Z 39.2 °F", "3: 2026-02-24T13:03:30Z 39.7 °F"),
        samples(series));
    FileRead file = day.files().get(1);
    assertEquals("log 2 2", file.use() + " " + file.rows() + " " + file.used());
  }

  @Test
  void every_key_of_a_layout_is_heeded() {
    String more =
        "\"encoding\": \"windows-1252\", \"delimiter\": \";\", \"decimal\": \",\", \"skip\": 2";
    String time =
        "\"time\": {\"columns\": [\"Datum\", \"Zeit\"], \"pattern\": \"dd.MM.yyyy HH:mm\","
            + " \"zone\": \"Europe/Berlin\"}";
    String core =
        "{\"column\": \"Kern (°C)\", \"what\": \"internal temperature\", \"unit\": \"°C\","
            + " \"lots\": [\"A1\", \"A2\"]}";
    String air =
        "{\"column\": \"Luft\", \"what\": \"cooler temperature\", \"unit\": \"°C\", \"place\":"
            + " \"F1\", \"from\": \"2026-02-24 08:03\", \"until\": \"2026-02-24T08:03:00\"}";
    String log =
        """
        Schreiber 7
        ;;;
        Datum;Zeit;Kern (°C);Luft;;
        24.02.2026;08:02;4,25;1,5;;
        24.02.2026;08:03;4,5;-1,5;;
        24.02.2026;08:04;4,75;2,5;;
        """
            .replace("\n", "\r\n");
    Day day =
        Days.read(
            Days.NEW_YORK,
            file("logs.json", layout(more, time, core, air)),
            SourceFile.of("2026-02-24/p1.csv", log.getBytes(Charset.forName("windows-1252"))));
    assertEquals(List.of(), said(day));
    assertEquals(
        List.of(
            "4: 2026-02-24T07:02:00Z 4.25 °C",
            "5: 2026-02-24T07:03:00Z 4.5 °C",
            "6: 2026-02-24T07:04:00Z 4.75 °C"),
        samples(day.series().get(0)));
    assertEquals(List.of("5: 2026-02-24T07:03:00Z -1.5 °C"), samples(day.series().get(1)));
    assertEquals(List.of("A1", "A2"), day.series().get(0).lots());
    assertEquals("F1", day.series().get(1).place());
    assertEquals("Luft", day.series().get(1).called());
    assertEquals(60_000, day.series().get(0).precisionMillis());
  }

  @Test
  void a_UTF_16_log_is_read() {
    byte[] log = "\uFEFFTime\tP1\r\n2026-02-24 08:02:00\t39.2\r\n".getBytes(UTF_16LE);
    Day day =
        Days.read(
            Days.NEW_YORK,
            file("logs.json", layout("", TIME, CORE)),
            SourceFile.of("2026-02-24/p1.csv", log));
    assertEquals(List.of(), said(day));
    assertEquals(List.of("2: 2026-02-24T13:02:00Z 39.2 °F"), samples(day.series().get(0)));
  }

  static Stream<Arguments> clocks() {
    return Stream.of(
        Arguments.of("yyyy-MM-dd HH:mm:ss", "2026-02-24 08:02:03", "13:02:03Z", 0),
        Arguments.of("yyyy-MM-dd'T'HH:mm:ss", "2026-02-24T08:02:03", "13:02:03Z", 0),
        Arguments.of("yyyy-MM-dd HH:mm:ss.SSS", "2026-02-24 08:02:03.250", "13:02:03.250Z", 0),
        Arguments.of("M/d/yy H:mm", "2/24/26 8:02", "13:02:00Z", 60_000),
        Arguments.of("d/M/yyyy h:mm a", "24/2/2026 8:02 am", "13:02:00Z", 60_000),
        Arguments.of("d/M/yyyy h:mm:ss a", "24/2/2026 8:02:03 AM", "13:02:03Z", 0),
        Arguments.of("'day' d MMM uuuu HH:mm", "day 24 Feb 2026 08:02", "13:02:00Z", 60_000),
        Arguments.of("yyyy-MM-dd HH:mm[:ss]", "2026-02-24 08:02", "13:02:00Z", 60_000));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("clocks")
  void a_clock_is_read_by_its_pattern(String pattern, String text, String time, long precision) {
    Day day = read(layout("", pattern(pattern), CORE), "Time,P1\n" + text + ",39.2\n");
    assertEquals(List.of(), said(day));
    Series series = day.series().get(0);
    assertEquals(List.of("2: 2026-02-24T" + time + " 39.2 °F"), samples(series));
    assertEquals(precision, series.precisionMillis());
  }

  @ParameterizedTest
  @MethodSource("noClocks")
  void a_pattern_that_leaves_the_time_open_is_refused(String pattern) {
    assertEquals(
        List.of(
            "broken logs.json:1:logs[0].time.pattern: found \""
                + pattern
                + "\", expected a date and time such as yyyy-MM-dd HH:mm:ss"
                + (pattern.contains("h:mm")
                    ? "; a clock of 12 hours needs an \"a\" for AM and PM"
                    : "")),
        said(
                Days.read(
                    Days.NEW_YORK,
                    file("logs.json", layout("", pattern(pattern), CORE)),
                    file("p1.csv", "Time,P1\n")))
            .stream()
            .limit(1)
            .toList());
  }

  static Stream<String> noClocks() {
    return Stream.of(
        "yyyy-MM-dd",
        "HH:mm:ss",
        "dd HH:mm",
        "M/d/yyyy h:mm",
        "M/d/yyyy hh:mm:ss",
        "yyyy-MM-dd HH",
        "yyyy-MM-dd HH:mm:ss z",
        "YYYY-MM-dd HH:mm",
        "no pattern",
        "{",
        "");
  }

  static Stream<Arguments> stopped() {
    String at = "2026-02-24 08:0";
    return Stream.of(
        Arguments.of(
            List.of(at + "2:00,1", at + "2:00,1", at + "3:00,2"),
            List.of("note p1.csv:3: found the readings of line 2 once more, expected each once"),
            "2 4"),
        Arguments.of(
            List.of(at + "2:00,1", at + "2:00,2", at + "3:00,3"),
            List.of(
                "note p1.csv:3:Time: found 2026-02-24 08:02:00 as on line 2, with other values,"
                    + " expected one row a time; both are counted"),
            "2 3 4"),
        Arguments.of(
            List.of(at + "4:00,1", at + "2:00,2", at + "3:00,3", at + "5:00,4"),
            List.of(
                "stop p1.csv:3:Time: found 2026-02-24 08:02:00 behind 2026-02-24 08:04:00 (2 rows,"
                    + " lines 3 to 4), expected a later time"),
            "2 5"),
        Arguments.of(
            List.of(at + "2:00,1", "Time,P1", at + "3:00,2", "Time,P1"),
            List.of(
                "note p1.csv:3: found Time, P1, expected the heading once, on line 1",
                "note p1.csv:5: found Time, P1, expected the heading once, on line 1"),
            "2 4"),
        Arguments.of(
            List.of(",°F", at + "2:00,1", "end of data"),
            List.of(
                "note p1.csv:2:Time: found no time, expected yyyy-MM-dd HH:mm:ss",
                "note p1.csv:4:Time: found end of data, expected yyyy-MM-dd HH:mm:ss"),
            "3"),
        Arguments.of(
            List.of(at + "2:00,1", ",2", "2026-02-31 08:03:00,3"),
            List.of(
                "stop p1.csv:3:Time: found no time (2 rows, lines 3 to 4), expected yyyy-MM-dd"
                    + " HH:mm:ss"),
            "2"),
        Arguments.of(List.of(at + "2:00,1", at + "3:00,", at + "4:00"), List.of(), "2"),
        Arguments.of(
            List.of(
                at + "2:00,ERR", at + "3:00,--", at + "4:00,1", at + "5:00,HHH", at + "6:00,1.2.3"),
            List.of(
                "note p1.csv:2:P1: found ERR (2 rows, lines 2 to 3), expected a number",
                "stop p1.csv:5:P1: found HHH (2 rows, lines 5 to 6), expected a number, alone or"
                    + " with its unit"),
            "4"),
        Arguments.of(
            List.of(at + "2:00,1.1234567891", at + "3:00,75.41499934151251"), List.of(), "2 3"),
        Arguments.of(
            List.of(at + "2:00,123456789"),
            List.of(
                "stop p1.csv:2:P1: found 123456789, expected at most eight digits before the"
                    + " decimal mark"),
            ""),
        Arguments.of(
            List.of(
                "2026-11-01 00:59:00,1",
                "2026-11-01 01:00:00,2",
                "2026-11-01 01:59:59,3",
                "2026-11-01 02:00:00,4"),
            List.of(
                "stop p1.csv:3:Time: found 2026-11-01 01:00:00, which the clock showed twice in"
                    + " America/New_York (2 rows, lines 3 to 4), expected times with one meaning;"
                    + " neither a step back nor a steady interval tells the two apart"),
            "2 5"),
        Arguments.of(
            List.of("2026-03-08 01:59:59,1", "2026-03-08 02:00:00,2", "2026-03-08 03:00:00,3"),
            List.of(
                "stop p1.csv:3:Time: found 2026-03-08 02:00:00, which the clock skipped in"
                    + " America/New_York, expected a time that was on the clock"),
            "2 4"));
  }

  @ParameterizedTest(name = "{1}")
  @MethodSource("stopped")
  void a_row_of_a_log_is_used_or_told(List<String> rows, List<String> said, String lines) {
    Day day = rows(rows.toArray(String[]::new));
    assertEquals(said, said(day));
    assertEquals(
        lines,
        String.join(
            " ", samples(day.series().get(0)).stream().map(s -> s.split(":", 2)[0]).toList()));
  }

  @Test
  void one_bad_cell_does_not_lose_its_neighbours() {
    String air =
        CORE.replace("P1", "Air")
            .replace("internal", "chamber")
            .replace("\"lot\": \"A1\"", "\"place\": \"SM\"");
    Day day = read(layout("", TIME, CORE, air), "Time,P1,Air\n2026-02-24 08:02:00,OPEN,150\n");
    assertEquals(List.of("note p1.csv:2:P1: found OPEN, expected a number"), said(day));
    assertEquals(List.of("2: 2026-02-24T13:02:00Z 150 °F"), samples(day.series().get(1)));
    assertEquals(1, day.files().get(1).used());
  }

  @Test
  void a_missing_column_is_broken() {
    assertEquals(
        List.of(
            "broken p1.csv:1:P1: found no column \"P1\" in Time, P2, expected the columns that"
                + " logs.json names"),
        said(read(layout("", TIME, CORE), "Time,P2\n2026-02-24 08:02:00,1\n")));
  }

  @Test
  void a_log_that_is_not_there_is_asked_for() {
    assertEquals(
        List.of(
            "ask logs.json:1:logs[0]: found no file called p*.csv, expected the log that this entry"
                + " describes"),
        said(Days.read(Days.NEW_YORK, file("logs.json", layout("", TIME, CORE)))));
  }

  static Stream<Arguments> globs() {
    return Stream.of(
        Arguments.of("p*.csv", "p.csv", true),
        Arguments.of("p*.csv", "P1.csv", false),
        Arguments.of("p?.csv", "p1.csv", true),
        Arguments.of("p?.csv", "p12.csv", false),
        Arguments.of("a.b.csv", "aXb.csv", false),
        Arguments.of("(a)+[1].csv", "(a)+[1].csv", true),
        Arguments.of("*", "x.csv", true));
  }

  @ParameterizedTest
  @MethodSource("globs")
  void a_glob_has_a_star_for_any_letters_and_a_question_mark_for_one(
      String glob, String name, boolean fits) {
    Day day =
        Days.read(
            Days.NEW_YORK,
            file("logs.json", layout("", TIME, CORE).replace("p*.csv", glob)),
            file(name, "Time,P1\n2026-02-24 08:02:00,1\n"));
    assertEquals(fits ? 1 : 0, day.series().size());
    assertEquals(fits ? 0 : 2, day.faults().size());
  }
}
