package org.flitchbook.reading;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.flitchbook.reading.Days.file;
import static org.flitchbook.reading.Days.said;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.charset.Charset;
import java.util.List;
import org.flitchbook.input.SourceFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Headings as loggers, and programs after them, write them; and what they say of the unit. */
final class HeadingsTest {

  private static final String TIME =
      "\"pattern\": \"yyyy-MM-dd HH:mm:ss\", \"zone\": \"America/New_York\"";

  private static Day read(String inLayout, String inFile, String... rows) {
    return Days.read(
        Days.NEW_YORK,
        file("logs.json", Days.layout(TIME, "").replace("\"P1\"", "\"" + inLayout + "\"")),
        file(
            "p1.csv",
            "Time;" + inFile + "\n" + String.join("\n", rows) + "\n2026-02-24 08:02:00;39.2\n"));
  }

  @ParameterizedTest
  @CsvSource({"Temp 1 (Â°F)", "Temp 1 (\uFFFDF)", "T1", "Ch1", "Food", "'a, b'", "Kern  [°F]"})
  void a_heading_is_named_letter_by_letter(String heading) {
    Day day = read(heading, heading.contains(",") ? "\"" + heading + "\"" : heading);
    assertEquals(List.of(), said(day));
    assertEquals(1, day.series().get(0).samples().size());
  }

  @ParameterizedTest
  @CsvSource({
    "Temp 1 (°F), Temp 1 (Â°F)",
    "Temp 1 (°F), Temp 1 (\uFFFDF)",
    "Temp 1 (°F), Temp 1 (?F)",
    "Temp 1 (°F), Temp1 (°F)",
    "Temp 1 (°F), temp  1 (°F)"
  })
  void a_heading_that_differs_by_a_broken_sign_or_a_space_is_shown(String stated, String written) {
    assertEquals(
        List.of(
            "broken p1.csv:1:"
                + stated
                + ": found no column \""
                + stated
                + "\" in \""
                + written
                + "\", expected in logs.json the word letter by letter as the file has it, or the"
                + " \"encoding\" that gives its letters"),
        said(read(stated, written)));
  }

  @Test
  void the_right_encoding_mends_a_degree_sign() {
    byte[] log =
        "Time;Temp (°F)\n2026-02-24 08:02:00;39.2\n".getBytes(Charset.forName("windows-1252"));
    String layout =
        Days.layout(TIME, "\"encoding\": \"windows-1252\", ").replace("\"P1\"", "\"Temp (°F)\"");
    Day day =
        Days.read(
            Days.NEW_YORK, file("logs.json", layout), SourceFile.of("2026-02-24/p1.csv", log));
    assertEquals(List.of(), said(day));
    Day marked =
        Days.read(
            Days.NEW_YORK,
            file("logs.json", layout),
            SourceFile.of(
                "2026-02-24/p1.csv",
                ("\uFEFF" + new String(log, Charset.forName("windows-1252"))).getBytes(UTF_8)));
    assertEquals(1, marked.series().get(0).samples().size());
  }

  /** Read as °F, a core that starts at 4 °C and peaks at 66 would never reach any limit. */
  @ParameterizedTest
  @CsvSource({
    "Temp 1 (°C)",
    "P1 °C",
    "P1 Â°C",
    "P1 (\uFFFDC)",
    "P1 deg C",
    "Temperature [C]",
    "Celsius 1",
    "P1 ℃"
  })
  void a_heading_that_names_the_other_scale_is_asked_about(String heading) {
    assertEquals(
        List.of(
            "ask p1.csv:1:"
                + heading
                + ": found °C in \""
                + heading
                + "\", expected °F as logs.json says"),
        said(read(heading, heading)));
  }

  @ParameterizedTest
  @CsvSource({"Probe C", "Probe (C)", "Ch C1", "C", "Temp 1 (°F)", "P1 deg F"})
  void a_letter_alone_is_a_probes_name(String heading) {
    assertEquals(List.of(), said(read(heading, heading)));
  }

  @Test
  void a_row_of_units_is_noted_and_held_against_what_is_stated() {
    assertEquals(
        List.of("note p1.csv:2:Time: found no time, expected yyyy-MM-dd HH:mm:ss"),
        said(read("P1", "P1", ";°F")));
    assertEquals(
        List.of(
            "ask p1.csv:2:P1: found °C in \"°C\", expected °F as logs.json says",
            "note p1.csv:2:Time: found no time, expected yyyy-MM-dd HH:mm:ss"),
        said(read("P1", "P1", ";°C")));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "stop | 39,2 | a number, alone or with its unit; the decimal mark is stated as \"decimal\""
            + " in logs.json",
        "ask | ##### | a number, or a usual word for no reading; a spreadsheet wrote this over what"
            + " was there: export the log again",
        "stop | 1.234,5 | a number, alone or with its unit",
        "note | ERR | a number"
      })
  void what_often_lies_behind_a_cell_without_a_number_is_told(
      String severity, String cell, String expected) {
    assertEquals(
        severity + " p1.csv:2:P1: found " + cell + ", expected " + expected,
        said(read("P1", "P1", "2026-02-24 08:01:00;" + cell)).get(0));
  }

  private static Day zoned(String heading, String zone, String... times) {
    String layout =
        Days.layout(TIME.replace("America/New_York", zone), "")
            .replace("\"column\": \"Time\"", "\"column\": \"" + heading + "\"");
    StringBuilder log = new StringBuilder("\"" + heading + "\";P1\n");
    for (String time : times) {
      log.append(time).append(" 08:02:00;39.2\n");
    }
    return Days.read(Days.NEW_YORK, file("logs.json", layout), file("p1.csv", log.toString()));
  }

  /** In New York it is five hours behind in winter and four in summer. */
  @ParameterizedTest
  @CsvSource({
    "'Date Time, GMT-05:00', America/New_York, ''",
    "'Date Time, GMT-05:00', -05:00, ''",
    "'Time (UTC-5)', America/New_York, ''",
    "'Time (UTC)', UTC, ''",
    "'Time [UTC+0530]', +05:30, ''",
    "'Time', America/New_York, ''",
    "'Date Time, GMT+01:00', America/New_York, +01:00",
    "'Date Time, GMT-04:00', America/New_York, -04:00",
    "'Time (UTC)', America/New_York, Z",
    "'Time UTC+5:30', +05:00, +05:30",
  })
  void an_offset_in_the_heading_is_held_against_the_zone(
      String heading, String zone, String named) {
    List<String> expected =
        named.isEmpty()
            ? List.of()
            : List.of(
                "ask p1.csv:2:%s: found %s in \"%s\", expected %s as %s in logs.json has it then"
                    .formatted(
                        heading, named, heading, zone.startsWith("+") ? zone : "-05:00", zone));
    assertEquals(expected, said(zoned(heading, zone, "2026-02-24")));
  }

  @Test
  void a_log_over_a_change_of_the_clock_is_held_against_it_at_its_end_too() {
    assertEquals(
        1, said(zoned("GMT-05:00", "America/New_York", "2026-03-07", "2026-03-09")).size());
  }
}
