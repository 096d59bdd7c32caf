package org.flitchbook.reading;

import static org.flitchbook.reading.Days.said;
import static org.flitchbook.reading.Days.samples;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Clocks that write no date: what they count has to be stated. */
final class ClocksTest {

  private static final String ZONE = ", \"zone\": \"America/New_York\"";
  private static final String START = "\"start\": \"2026-02-24T08:02:00\", \"elapsed\": ";

  private static Day cells(String time, String... cells) {
    StringBuilder log = new StringBuilder("Time;P1\n");
    for (int i = 0; i < cells.length; i++) {
      log.append(cells[i]).append(';').append(i).append('\n');
    }
    return Days.log(time + ZONE, log.toString());
  }

  private static List<String> times(Day day) {
    return samples(day.series().get(0)).stream().map(s -> s.split(" ", -1)[1]).toList();
  }

  @ParameterizedTest(name = "{0} {1}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          "elapsed": "seconds"       | 0 90 3600.5           | 13:02:00Z 13:03:30Z 14:02:00.500Z | 0
          "elapsed": "minutes"       | 0 1 90                | 13:02:00Z 13:03:00Z 14:32:00Z     | 60000
          "elapsed": "minutes"       | 0 0.5 1 1.50          | 13:02:00Z 13:02:30Z 13:03:00Z 13:03:30Z | 600
          "elapsed": "h:mm:ss"       | 0:00:00 0:07:30 11:00:00 | 13:02:00Z 13:09:30Z 00:02:00Z   | 0
          "elapsed": "h:mm"          | 0:00 1:30             | 13:02:00Z 14:32:00Z               | 60000
          "elapsed": "mm:ss"         | 0:00 90:30            | 13:02:00Z 14:32:30Z               | 0
          "epoch": "seconds"         | 1771938120 1771938121.25 | 13:02:00Z 13:02:01.250Z        | 0
          "epoch": "milliseconds"    | 1771938120000 1771938120250 | 13:02:00Z 13:02:00.250Z     | 0
          "serial": "1899-12-30"     | 46077.334722222 46077.5 | 13:02:00Z 17:00:00Z             | 0
          "serial": "1904-01-01"     | 44615.334722222 44615.5 | 13:02:00Z 17:00:00Z             | 0
          "serial": "1899-12-30"     | 46077.33 46077.5      | 12:55:12Z 17:00:00Z               | 864000
          """)
  void a_clock_counts_what_is_stated(String form, String cells, String times, long precision) {
    String time = form.startsWith("\"elapsed") ? START + form.split(": ", -1)[1] : form;
    Day day = cells(time, cells.split(" "));
    assertEquals(List.of(), said(day));
    assertEquals(
        Arrays.asList(times.split(" ")), times(day).stream().map(at -> at.substring(11)).toList());
    assertEquals(precision, day.series().get(0).precisionMillis());
  }

  @Test
  void a_time_with_its_offset_needs_no_zone_of_its_own() {
    Day day =
        cells(
            "\"pattern\": \"yyyy-MM-dd'T'HH:mm:ssXXX\"",
            "2026-11-01T01:59:00-04:00",
            "2026-11-01T01:00:00-05:00",
            "2026-11-01T06:01:00Z");
    assertEquals(List.of(), said(day));
    assertEquals(
        List.of("2026-11-01T05:59:00Z", "2026-11-01T06:00:00Z", "2026-11-01T06:01:00Z"),
        times(day));
  }

  @Test
  void a_clock_that_counts_runs_through_the_doubled_hour() {
    Day day =
        cells(
            "\"start\": \"2026-11-01 00:59\", \"elapsed\": \"minutes\"", "0.0", "30", "61", "120");
    assertEquals(List.of(), said(day));
    assertEquals("2026-11-01T06:59:00Z", times(day).get(3));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          "elapsed": "seconds", "start": "2026-02-24 08:02" | 1:30 | seconds since the start
          "elapsed": "mm:ss", "start": "2026-02-24 08:02"   | 1:30:00 | mm:ss since the start
          "elapsed": "h:mm:ss", "start": "2026-02-24 08:02" | 1:30 | h:mm:ss since the start
          "elapsed": "h:mm:ss", "start": "2026-02-24 08:02" | 1:75:00 | h:mm:ss since the start
          "epoch": "seconds" | 1771938120000 | Unix seconds of a time from 2000 to 2099; Unix time has 10 digits in seconds, 13 in milliseconds
          "epoch": "milliseconds" | 1771938120 | Unix milliseconds of a time from 2000 to 2099; Unix time has 10 digits in seconds, 13 in milliseconds
          "epoch": "seconds" | 1.77E+09 | Unix seconds of a time from 2000 to 2099
          "serial": "1899-12-30" | 0.3347 | days since 1899-12-30, of a time from 2000 to 2099
          "pattern": "yyyy-MM-dd HH:mm" | 46077.334 | yyyy-MM-dd HH:mm; the days of a spreadsheet are stated as "serial" in logs.json
          "pattern": "yyyy-MM-dd HH:mm" | ######## | yyyy-MM-dd HH:mm; a spreadsheet wrote this over what was there: export the log again
          "pattern": "M/d/yyyy h:mm a" | 2/24/2026 8:02 | M/d/yyyy h:mm a; AM or PM is missing
          """)
  void a_cell_that_is_no_such_time_is_told_with_what_often_lies_behind_it(
      String time, String cell, String expected) {
    Day day = cells(time, cell);
    assertEquals(
        List.of("stop p1.csv:2:Time: found " + cell + ", expected " + expected), said(day));
    assertEquals(0, day.series().get(0).samples().size());
  }

  static Stream<List<String>> refusals() {
    String time = "broken logs.json:1:logs[0].time.";
    return Stream.of(
        List.of(
            "\"elapsed\": \"seconds\"", time + "start: found no \"start\", expected a text there"),
        List.of(
            "\"elapsed\": \"hours\", \"start\": \"2026-02-24 08:02\"",
            time
                + "elapsed: found \"hours\", expected milliseconds, seconds, minutes, h:mm:ss, h:mm"
                + " or mm:ss"),
        List.of(
            "\"elapsed\": \"seconds\", \"start\": \"08:02\"",
            time
                + "start: found 08:02, a time without a date, expected 2026-02-16 09:05 or the"
                + " like"),
        List.of(
            "\"elapsed\": \"seconds\", \"start\": \"2026-11-01 01:30\"",
            time
                + "start: found 2026-11-01 01:30, which the clock showed twice in America/New_York,"
                + " expected an offset behind it, -04:00 or -05:00"),
        List.of(
            "\"epoch\": \"seconds\", \"pattern\": \"HH\"",
            time + "epoch: found \"pattern\" and \"epoch\", expected one of them"),
        List.of(
            "\"epoch\": \"days\"",
            time + "epoch: found \"days\", expected seconds or milliseconds"),
        List.of(
            "\"epoch\": \"seconds\", \"start\": \"2026-02-24 08:02\"",
            time
                + "start: found the key \"start\", expected one of column, columns, zone, pattern,"
                + " elapsed, epoch, serial, order, offset, because"),
        List.of(
            "\"serial\": \"1900\"",
            time + "serial: found \"1900\", expected the day 0, such as 1899-12-30"),
        List.of(
            "\"epoch\": \"seconds\", \"order\": \"descending\"",
            time + "order: found \"descending\", expected \"newest first\""),
        List.of(
            "\"epoch\": \"seconds\", \"offset\": \"37 min\", \"because\": \"x\"",
            time
                + "offset: found \"37 min\", expected a time with its sign, such as +37 min or -1"
                + " h"),
        List.of(
            "\"epoch\": \"seconds\", \"offset\": \"+37 min\"",
            time
                + "because: found no reason, expected how the clock was found to be off, and by"
                + " whom"),
        List.of(
            "\"epoch\": \"seconds\", \"because\": \"x\"",
            time + "because: found a reason without an \"offset\", expected both, or neither"));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("refusals")
  void a_clock_that_leaves_something_open_is_broken(List<String> row) {
    List<String> broken =
        said(cells(row.get(0), "0")).stream().filter(said -> said.startsWith("broken")).toList();
    assertEquals(row.subList(1, row.size()), broken.subList(broken.size() - 1, broken.size()));
  }

  @Test
  void a_correction_is_added_to_each_time_and_told_with_both() {
    Day day =
        cells(
            "\"pattern\": \"yyyy-MM-dd HH:mm:ss\", \"offset\": \"+37 min\", \"because\": \"out at"
                + " 12:08 by the wall clock, MA\"",
            "2026-02-24 11:30:00",
            "2026-02-24 11:31:00");
    assertEquals(List.of("2026-02-24T17:07:00Z", "2026-02-24T17:08:00Z"), times(day));
    assertEquals(
        List.of(
            "note p1.csv:2:Time: found 2026-02-24 11:30:00 to 2026-02-24 11:31:00, read as"
                + " 2026-02-24 12:07:00 to 2026-02-24 12:08:00 because out at 12:08 by the wall"
                + " clock, MA, expected a clock that goes right;"
                + " 2026-02-24/logs.json:1:logs[0].time.offset corrects it"),
        said(day));
    assertEquals("clock offset", day.faults().get(0).rule());
  }

  @ParameterizedTest
  @ValueSource(strings = {"-3 s", "+2 h", "+0 min", "-37min"})
  void a_correction_has_a_sign_and_a_unit(String offset) {
    String because = ", \"because\": \"x\"";
    Day day =
        cells("\"epoch\": \"seconds\", \"offset\": \"" + offset + "\"" + because, "1771938120");
    assertEquals(1, day.series().get(0).samples().size());
  }

  /** A wrong order of day and month, or a wrong year, ends up months away. */
  @Test
  void a_time_beyond_the_day_behind_the_folders_is_asked_about() {
    Day day =
        cells(
            "\"pattern\": \"d/M/yyyy HH:mm:ss\"",
            "1/1/2027 23:59:59",
            "2/1/2027 00:00:01",
            "2/1/2027 00:01:01");
    assertEquals(
        List.of(
            "ask p1.csv:3:Time: found 2/1/2027 00:00:01 (2 rows, lines 3 to 4), expected a time up"
                + " to the end of the day behind the folder's"),
        said(day));
    assertEquals(3, day.series().get(0).samples().size());
  }
}
