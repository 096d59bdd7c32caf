package org.flitchbook.reading;

import static org.flitchbook.reading.Days.said;
import static org.flitchbook.reading.Days.samples;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Logs without a heading, whose columns logs.json names by their numbers. */
final class NoHeadingTest {

  private static final String TIME =
      "\"pattern\": \"yyyy-MM-dd HH:mm:ss\", \"zone\": \"America/New_York\"";

  private static Day read(String more, String time, String value, String log) {
    String layout =
        Days.layout(TIME, "\"heading\": \"none\", " + more)
            .replace("\"column\": \"Time\"", time)
            .replace("\"column\": \"P1\"", "\"column\": \"" + value + "\"");
    return Days.read(Days.NEW_YORK, Days.file("logs.json", layout), Days.file("p1.csv", log));
  }

  private static Day read(String log) {
    return read("", "\"column\": \"1\"", "2", log);
  }

  @Test
  void the_first_row_is_read_and_columns_are_counted_from_1() {
    Day day = read("2026-02-24 08:02:00,39.2\n2026-02-24 08:03:00,39.4\n");
    assertEquals(List.of(), said(day));
    assertEquals(
        List.of("1: 2026-02-24T13:02:00Z 39.2 °F", "2: 2026-02-24T13:03:00Z 39.4 °F"),
        samples(day.series().get(0)));
    assertEquals(2, day.files().get(1).rows());
    assertEquals(2, day.files().get(1).used());
  }

  @Test
  void a_count_of_the_rows_that_is_the_number_of_the_time_is_no_heading() {
    Day day =
        read(
            "",
            "\"column\": \"2\"",
            "3",
            "1,2026-02-24 08:02:00,39.2\n2,2026-02-24 08:03:00,39.4\n");
    assertEquals(2, day.series().get(0).samples().size());
    assertEquals(2, day.files().get(1).used());
  }

  @Test
  void the_first_row_may_lack_its_last_cells() {
    Day day =
        read("", "\"column\": \"1\"", "3", "2026-02-24 08:02:00\n2026-02-24 08:03:00,,39.4\n");
    assertEquals(List.of("2: 2026-02-24T13:03:00Z 39.4 °F"), samples(day.series().get(0)));
  }

  @Test
  void date_and_time_may_stand_in_two_columns() {
    Day day =
        read(
            "",
            "\"columns\": [\"2\", \"3\"]",
            "5",
            "7,2026-02-24,08:02:00,x,39.2\n8,2026-02-24,08:03:00,x,39.4\n");
    assertEquals(
        List.of(
            "ask p1.csv:1:1: found numbers under \"1\", expected what they are, as a column in"
                + " logs.json, or \"leftOut\" there with the reason",
            "note p1.csv:1:4: found more columns: \"4\", expected those that logs.json names; the"
                + " rest counts for nothing"),
        said(day));
    assertEquals(2, day.series().get(0).samples().size());
  }

  /** The lines of what is no row are skipped; a short heading above wide rows, too. */
  @Test
  void skip_passes_over_what_stands_above_the_rows() {
    Day day =
        read(
            "\"skip\": 2, ",
            "\"column\": \"1\"",
            "3",
            "Logger 7\nTime,Temp\n2026-02-24 08:02:00,x,39.2\n2026-02-24 08:03:00,x,39.4\n");
    assertEquals(
        List.of("3: 2026-02-24T13:02:00Z 39.2 °F", "4: 2026-02-24T13:03:00Z 39.4 °F"),
        samples(day.series().get(0)));
  }

  @Test
  void readings_that_skip_passes_over_are_a_stop_here_too() {
    Day day =
        read(
            "\"skip\": 1, ",
            "\"column\": \"1\"",
            "2",
            "2026-02-24 08:02:00,58.0\n2026-02-24 08:03:00,39.4\n");
    assertEquals(
        List.of(
            "stop p1.csv:1: found 2026-02-24 08:02:00, 58.0, expected no readings in the lines"
                + " that \"skip\" passes over"),
        said(day));
  }

  @Test
  void a_row_of_words_is_no_reading() {
    Day day = read("Time,P1\n2026-02-24 08:02:00,39.2\n");
    assertEquals(List.of("note p1.csv:1:1: found Time, expected yyyy-MM-dd HH:mm:ss"), said(day));
    assertEquals(1, day.series().get(0).samples().size());
  }

  @Test
  void a_column_beyond_the_first_row_is_missing() {
    Day day = read("", "\"column\": \"1\"", "3", "2026-02-24 08:02:00,39.2\n");
    assertEquals(
        List.of(
            "broken p1.csv:1:3: found no column \"3\" in 1, 2, expected the columns that logs.json"
                + " names"),
        said(day));
  }

  /** A bare decimal comma makes a row wider than the first. */
  @Test
  void a_wider_row_is_a_stop() {
    Day day = read("2026-02-24 08:02:00,39\n2026-02-24 08:03:00,39,4\n");
    assertEquals(
        List.of(
            "stop p1.csv:2: found 2026-02-24 08:03:00, 39, 4, expected no filled cell under no word"
                + " of the heading; a decimal comma can't stand bare in a comma file"),
        said(day));
  }

  @Test
  void numbers_in_a_column_that_nothing_reads_are_asked_about() {
    Day day = read("2026-02-24 08:02:00,39.2,61.5\n2026-02-24 08:03:00,39.4,61.2\n");
    assertEquals(
        List.of(
            "ask p1.csv:1:3: found numbers under \"3\", expected what they are, as a column in"
                + " logs.json, or \"leftOut\" there with the reason"),
        said(day));
  }

  @Test
  void another_word_for_heading_is_refused() {
    Day day = Days.log(TIME, "\"heading\": \"line 2\", ", "Time,P1\n2026-02-24 08:02:00,39.2\n");
    assertEquals(
        "broken logs.json:1:logs[0].heading: found \"line 2\", expected \"none\"",
        said(day).get(0));
  }
}
