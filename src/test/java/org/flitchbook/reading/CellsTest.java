package org.flitchbook.reading;

import static org.flitchbook.reading.Days.said;
import static org.flitchbook.reading.Days.samples;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What a cell under a column of readings may hold, and what becomes of it. */
final class CellsTest {

  private static final String TIME =
      "\"pattern\": \"yyyy-MM-dd HH:mm:ss\", \"zone\": \"America/New_York\"";
  private static final String NUMBER = ", expected a number";
  private static final String LOST = ", expected a number, alone or with its unit";
  private static final String DECIMAL = "; the decimal mark is stated as \"decimal\" in logs.json";

  private static Day cell(String more, String cell) {
    return Days.log(TIME, more, "Time;P1;\n2026-02-24 08:02:00;" + cell + ";\n");
  }

  private static String told(String cell) {
    return String.join(" / ", said(Days.log(TIME, "Time;P1\n2026-02-24 08:02:00;" + cell + "\n")));
  }

  private static void reads(String more, String cell, String value) {
    Day day = cell(more, cell);
    assertEquals(List.of(), said(day));
    assertEquals(List.of("2: 2026-02-24T13:02:00Z " + value + " °F"), samples(day.series().get(0)));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "58.0 | 58",
        "-.5 | -0.5",
        ".5 | 0.5",
        "58. | 58",
        "+58 | 58",
        "\u221258 | -58",
        "5.8e1 | 58",
        "5.8E+01 | 58",
        "580e-1 | 58",
        "58.0 °F | 58",
        "58.0°F | 58",
        "58.0\u00A0°F | 58",
        "58.0 F | 58",
        "58.0f | 58",
        "58.0 deg F | 58",
        "58.0 ?F | 58",
        "58.0 Â°F | 58",
        "58.0 \uFFFDF | 58",
        "58.0 ℉ | 58",
        "58.0 Fahrenheit | 58",
        "5.8e1 F | 58",
      })
  void a_number_is_read_alone_or_with_its_unit(String cell, String value) {
    reads("", cell, value);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {"58,0 | 58", "58,0 °F | 58", "5,8e1 | 58", "58 | 58"})
  void with_a_decimal_comma_too(String cell, String value) {
    reads("\"decimal\": \",\", ", cell, value);
  }

  @ParameterizedTest
  @ValueSource(strings = {"58.0 °C", "58.0 C", "58.0c", "58 ℃", "58.0 %", "58 %RH", "58 celsius"})
  void a_number_with_another_unit_than_the_stated_is_a_stop(String cell) {
    String unit = cell.contains("%") ? "%" : "°C";
    assertEquals(
        "stop p1.csv:2:P1: found " + unit + " in \"" + cell + "\", expected °F as logs.json says",
        told(cell));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        ">60",
        "<20",
        "~58",
        "58.0*",
        "58.0 ALARM",
        "58.0 K",
        "1.2.3",
        "1 013.2",
        "5e",
        "0x3A",
        "Err 2",
        "E1",
        "58.0 58.1",
        "58/60",
        "٥٨",
        "HI",
        "hi",
        "Lo",
        "LOW",
        "High",
        "OVER",
        "OVER °F",
        "Under",
        "Over range",
        "overflow",
        "OL",
        "O.L",
        "OFL",
        "HHH",
        "LLL",
        "inf",
        "-Inf",
        "Infinity",
        "∞",
        ">",
        "+OVER",
        "Out of range",
        "overload",
        "#DIV/0!",
        "2026-02-24",
        "1e99"
      })
  void a_cell_with_a_digit_or_a_word_for_off_range_is_a_stop(String cell) {
    assertEquals(
        "stop p1.csv:2:P1: found "
            + cell
            + (cell.equals("1e99")
                ? ", expected at most eight digits before the decimal mark"
                : LOST),
        told(cell));
  }

  @Test
  void a_comma_in_a_log_with_points_is_a_stop() {
    assertEquals("stop p1.csv:2:P1: found 58,0" + LOST + DECIMAL, told("58,0"));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "-",
        "--",
        "---",
        "--.-",
        "–",
        "—",
        ".",
        "NaN",
        "nan °F",
        "--- °F",
        "null",
        "(null)",
        "nil",
        "None",
        "N/A",
        "n.a.",
        "NA",
        "#N/A",
        "ND",
        "no data",
        "No Reading",
        "missing",
        "ERR",
        "Error",
        "fault",
        "FAIL",
        "OPEN",
        "open circuit",
        "short",
        "OFF",
        "offline",
        "disconnected",
        "Not connected",
        "no probe",
        "no sensor",
        "sensor error",
        "probe fault",
        "invalid",
        "unavailable",
        "unknown",
        "undefined",
        "[no value]",
        "2147483647",
        "-2147483648",
        "4294967295"
      })
  void the_usual_words_for_nothing_are_a_note(String cell) {
    Day day = Days.log(TIME, "Time;P1\n2026-02-24 08:02:00;" + cell + "\n");
    assertEquals(List.of("note p1.csv:2:P1: found " + cell + NUMBER), said(day));
    assertEquals(0, day.series().get(0).samples().size());
  }

  @Test
  void an_empty_cell_is_no_reading() {
    assertEquals("", told(""));
  }

  @ParameterizedTest
  @ValueSource(strings = {"ALARM", "door open", "warm", "*", "****", "?", "+", "#VALUE!", "####"})
  void any_other_word_is_asked_about(String cell) {
    String damaged =
        cell.contains("##")
            ? "; a spreadsheet wrote this over what was there: export the log again"
            : "";
    assertEquals(
        "ask p1.csv:2:P1: found "
            + cell
            + ", expected a number, or a usual word for no reading"
            + damaged,
        told(cell));
  }

  /** What the column does not hold for is none of its cells. */
  @Test
  void a_cell_outside_of_from_and_until_is_not_looked_at() {
    String layout =
        Days.layout(TIME, "").replace("\"item\"", "\"until\": \"2026-02-24 08:02:00\", \"item\"");
    Day day =
        Days.read(
            Days.NEW_YORK,
            Days.file("logs.json", layout),
            Days.file(
                "p1.csv",
                "Time,P1\n2026-02-24 08:02:00,HI\n2026-02-24 08:03:00,HI\n2026-02-24"
                    + " 08:04:00,ERR\n"));
    assertEquals(
        List.of(
            "stop p1.csv:2:P1: found HI" + LOST,
            "note p1.csv:3:Time: found 2026-02-24 08:03:00 (2 rows, lines 3 to 4), expected a time"
                + " that a \"from\" and \"until\" of logs.json holds"),
        said(day));
  }

  @Test
  void newest_first_each_cell_keeps_its_line() {
    Day day =
        Days.log(
            TIME + ", \"order\": \"newest first\"",
            "Time,P1\n2026-02-24 08:04:00,HI\n2026-02-24 08:03:00,38\n2026-02-24 08:02:00,37\n");
    assertEquals(List.of("stop p1.csv:2:P1: found HI" + LOST), said(day));
  }

  @Test
  void cells_that_follow_each_other_are_told_together() {
    Day day =
        Days.log(
            TIME,
            "Time,P1\n2026-02-24 08:02:00,>60\n2026-02-24 08:03:00,>61\n2026-02-24 08:04:00,38\n");
    assertEquals(List.of("stop p1.csv:2:P1: found >60 (2 rows, lines 2 to 3)" + LOST), said(day));
  }

  @ParameterizedTest
  @CsvSource({"ERR, 1", "38.0, 0", "'', 1"})
  void a_column_of_a_place_without_one_number_is_a_stop(String cell, int stops) {
    String layout =
        Days.layout(TIME, "")
            .replace("internal temperature", "cooler temperature")
            .replace("\"lot\": \"A1\"", "\"place\": \"F1\"");
    Day day =
        Days.read(
            Days.NEW_YORK,
            Days.file("logs.json", layout),
            Days.file("p1.csv", "Time,P1\n2026-02-24 08:02:00," + cell + "\n"));
    assertEquals(
        stops,
        said(day).stream()
            .filter(
                ("stop p1.csv:2:P1: found no reading in 1 rows, expected readings of every place"
                        + " that logs.json names")
                    ::equals)
            .count(),
        said(day).toString());
  }

  /** The log is parted by semicolons; a row of it otherwise, or in quotes as a whole. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "2026-02-24 08:03:00,58.0",
        "2026-02-24 08:03:00,58.0,41.2",
        "2026-02-24 08:03:00|58.0",
        "\"2026-02-24 08:03:00;58.0\"",
        "24/02/2026 08:03,58.0",
        "08:03:00|HI 58",
      })
  void a_row_that_stands_in_one_cell_is_a_lost_reading(String row) {
    String first = said(Days.log(TIME, "Time;P1\n2026-02-24 08:02:00;38.0\n" + row + "\n")).get(0);
    assertEquals(
        "stop p1.csv:3:Time: found " + row.replace("\"", "") + ", expected yyyy-MM-dd HH:mm:ss",
        first);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "Battery, 85",
        "Started 08:03, probe 2",
        "---",
        "Probe 2: 2026-02-24 08:03",
        ",",
        "|,",
        "12,5"
      })
  void what_a_logger_says_about_itself_is_none(String row) {
    String first = said(Days.log(TIME, "Time;P1\n2026-02-24 08:02:00;38.0\n" + row + "\n")).get(0);
    assertEquals("note", first.substring(0, 4), first);
  }
}
