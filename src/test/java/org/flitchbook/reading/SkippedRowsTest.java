package org.flitchbook.reading;

import static org.flitchbook.reading.Days.said;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Readings may hide under {@code skip}, or in what is taken for the heading. */
final class SkippedRowsTest {

  private static final String TIME =
      "\"pattern\": \"yyyy-MM-dd HH:mm:ss\", \"zone\": \"America/New_York\"";
  private static final String HIDDEN =
      ", expected no readings in the lines that \"skip\" passes over";

  private static Day skipping(int lines, String log) {
    return Days.log(TIME, "\"skip\": " + lines + ", ", log);
  }

  static Stream<Arguments> preambles() {
    return Stream.of(
        Arguments.of("Logger 7\nserial;77\n", ""),
        Arguments.of("Start,2026-02-24 08:00:00\nInterval,60\n", ""),
        Arguments.of("First,2026-02-24 08:00:00,38.0\n", ""),
        Arguments.of("\"a quote, \n\"\n", ""),
        Arguments.of("2026-02-24 08:00:00,\n", ""),
        Arguments.of("2026-02-24 08:00:00,ERR\n", ""),
        Arguments.of("2026-02-24 08:00:00,58.0\n", "1: found 2026-02-24 08:00:00, 58.0"),
        Arguments.of("2026-02-24 08:00:00,58.0 °F\n", "1: found 2026-02-24 08:00:00, 58.0 °F"),
        Arguments.of("2026-02-24 08:00:00,>60\n", "1: found 2026-02-24 08:00:00, >60"),
        Arguments.of(
            "Time,P1\n2026-02-24 08:00:00,58.0\n2026-02-24 08:01:00,58.0\n",
            "2: found 2026-02-24 08:00:00, 58.0 (2 rows, lines 2 to 3)"));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("preambles")
  void readings_that_skip_passes_over_are_a_stop(String preamble, String said) {
    int lines = (int) preamble.lines().count();
    Day day = skipping(lines, preamble + "Time,P1\n2026-02-24 08:02:00,38.0\n");
    assertEquals(said.isEmpty() ? List.of() : List.of("stop p1.csv:" + said + HIDDEN), said(day));
    assertEquals(1, day.series().get(0).samples().size());
  }

  /** A row without a reading is no heading either, whatever logs.json calls its columns. */
  @ParameterizedTest
  @CsvSource({"NaN", "---", "ERR", "38.9 F", "38.9"})
  void a_row_with_a_time_is_no_heading(String cell) {
    String row = "2026-02-24 08:01:00," + cell;
    String layout =
        Days.layout(TIME, "\"skip\": 2, ")
            .replace("\"column\": \"Time\"", "\"column\": \"2026-02-24 08:01:00\"")
            .replace("\"column\": \"P1\"", "\"column\": \"" + cell + "\"");
    Day day =
        Days.read(
            Days.NEW_YORK,
            Days.file("logs.json", layout),
            Days.file(
                "p1.csv",
                "Time,P1\n2026-02-24 08:00:00,58.0\n" + row + "\n2026-02-24 08:02:00,38.0\n"));
    assertEquals(
        List.of(
            "stop p1.csv:3:2026-02-24 08:01:00: found a time in the heading, expected words above"
                + " the times and readings; \"skip\" is too large?",
            "stop p1.csv:2: found 2026-02-24 08:00:00, 58.0" + HIDDEN),
        said(day));
  }

  /** Numbers are names of channels; what counts from a start is no time of a heading. */
  @Test
  void a_number_may_be_the_name_of_a_column() {
    String layout =
        Days.layout(
                "\"elapsed\": \"seconds\", \"start\": \"2026-02-24 08:00:00\", \"zone\":"
                    + " \"America/New_York\"",
                "")
            .replace("\"column\": \"P1\"", "\"column\": \"1\"");
    Day day =
        Days.read(
            Days.NEW_YORK,
            Days.file("logs.json", layout),
            Days.file("p1.csv", "Time,1\n0,38.0\n60,38.1\n"));
    assertEquals(List.of(), said(day));
  }
}
