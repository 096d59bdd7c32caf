package org.flitchbook.reading;

import static org.flitchbook.reading.Days.file;
import static org.flitchbook.reading.Days.said;
import static org.flitchbook.reading.Days.samples;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import org.flitchbook.input.Fault;
import org.junit.jupiter.api.Test;

/** Rows in another order than that of time, in several parts, or more than once. */
final class PartsTest {

  private static final String TIME =
      "\"pattern\": \"yyyy-MM-dd HH:mm:ss\", \"zone\": \"America/New_York\"";
  private static final String MINUTES =
      "\"pattern\": \"yyyy-MM-dd HH:mm\", \"zone\": \"America/New_York\"";

  /** Rows of the 24th as {@code 08:02 39.2}, a heading as {@code Time P1}. */
  private static String log(String... rows) {
    StringBuilder log = new StringBuilder("Time,P1\n");
    for (String row : rows) {
      String cells = row.replace(' ', ',');
      log.append(row.startsWith("T") ? cells : "2026-02-24 " + cells.replace(",", ":00,"));
      log.append('\n');
    }
    return log.toString();
  }

  private static Day read(String... rows) {
    return Days.log(TIME, log(rows));
  }

  private static String lines(Samples samples) {
    List<String> lines = new ArrayList<>();
    for (int i = 0; i < samples.size(); i++) {
      lines.add(
          samples.file(i).replace(Days.FOLDER, "").replace(".csv", "") + ":" + samples.line(i));
    }
    return String.join(" ", lines).replace("p1:", "");
  }

  private static String lines(Day day) {
    return lines(day.series().get(0).samples());
  }

  @Test
  void a_log_that_stands_newest_first_must_say_so() {
    String[] rows = {"08:04 3", "08:03 2", "08:02 1"};
    Day open = read(rows);
    assertEquals(
        List.of(
            "stop p1.csv:2:Time: found 2026-02-24 08:04:00 to 2026-02-24 08:02:00, expected the"
                + " oldest row first, or \"order\": \"newest first\" in the time of logs.json"),
        said(open));
    assertEquals("", lines(open));
    Day stated = Days.log(TIME + ", \"order\": \"newest first\"", log(rows));
    assertEquals(List.of(), said(stated));
    assertEquals("4 3 2", lines(stated));
  }

  @Test
  void a_log_said_to_stand_newest_first_that_does_not_is_a_stop() {
    Day day =
        Days.log(TIME + ", \"order\": \"newest first\"", log("08:02 1", "08:03 2", "08:04 3"));
    assertEquals(
        List.of(
            "stop p1.csv:2:Time: found 2026-02-24 08:02:00 to 2026-02-24 08:04:00, expected the"
                + " newest row first, as logs.json says"),
        said(day));
    assertEquals("", lines(day));
  }

  @Test
  void a_heading_begins_another_part_which_may_be_an_earlier_one() {
    Day day = read("12:00 1", "12:01 2", "12:02 3", "Time P1", "08:00 4", "08:01 5");
    assertEquals(
        List.of("note p1.csv:5: found Time, P1, expected the heading once, on line 1"), said(day));
    assertEquals("6 7 2 3 4", lines(day));
  }

  @Test
  void without_a_heading_a_time_that_goes_back_is_a_stop() {
    Day day = read("12:00 1", "12:01 2", "12:02 3", "08:00 4", "08:01 5");
    assertEquals(
        List.of(
            "stop p1.csv:5:Time: found 2026-02-24 08:00:00 behind 2026-02-24 12:02:00 (2 rows,"
                + " lines 5 to 6), expected a later time"),
        said(day));
    assertEquals("2 3 4", lines(day));
  }

  @Test
  void what_often_lies_behind_a_step_back_is_told() {
    assertEquals(
        "stop p1.csv:4:Time: found 2026-02-24 08:03:00 behind 2026-02-24 09:02:00, expected a later"
            + " time; a change of the clock that America/New_York does not have then?",
        said(read("09:01 1", "09:02 2", "08:03 3")).get(0));
    assertEquals(
        "stop p1.csv:5:Time: found 2026-02-24 01:00:00 behind 2026-02-24 12:59:00 (2 rows, lines 5"
            + " to 6), expected a later time; a clock of 12 hours without AM and PM?",
        said(read("12:57 1", "12:58 1", "12:59 2", "01:00 3", "01:01 3")).get(0));
  }

  @Test
  void a_part_exported_twice_into_one_file_is_read_once() {
    Day day = read("08:00 1", "08:01 2", "Time P1", "08:00 1", "08:01 2", "08:02 3");
    assertEquals(
        List.of(
            "note p1.csv:4: found Time, P1, expected the heading once, on line 1",
            "note p1.csv:5: found the readings of line 2 once more (2 rows, lines 5 to 6), expected"
                + " each once"),
        said(day));
    assertEquals("2 3 7", lines(day));
    assertEquals(3, day.files().get(1).used());
  }

  @Test
  void two_values_of_one_time_both_count_and_are_asked_about() {
    Day day = read("08:00 1", "08:01 2", "Time P1", "08:00 1", "08:01 9");
    assertEquals(
        "note p1.csv:6:Time: found 2026-02-24 08:01:00 as on line 3, with other values, expected"
            + " one row a time; both are counted",
        said(day).get(2));
    assertEquals("2 3 6", lines(day));
  }

  /** Read by the places of the first heading, the second part would swap the probes. */
  @Test
  void a_second_heading_with_its_words_in_another_order_is_read_by_its_words() {
    Day day =
        Days.log(
            TIME,
            "Time,P1,Air\n2026-02-24 08:00:00,39,150\nTime,Air,P1\n2026-02-24 08:01:00,151,40\n");
    assertEquals(
        List.of(
            "note p1.csv:3: found Time, Air, P1, expected the heading once, on line 1",
            "ask p1.csv:1:Air: found numbers under \"Air\", expected what they are, as a column in"
                + " logs.json, or \"leftOut\" there with the reason"),
        said(day));
    assertEquals(
        List.of("2: 2026-02-24T13:00:00Z 39 °F", "4: 2026-02-24T13:01:00Z 40 °F"),
        samples(day.series().get(0)));
  }

  @Test
  void rows_under_a_second_heading_that_has_none_of_the_columns_are_stops() {
    Day day = read("08:00 1", "Time P2", "08:01 2", "08:02 3", "Time P1", "08:03 4");
    assertEquals(
        List.of(
            "stop p1.csv:3: found no column \"P1\" in Time, P2 (3 rows, lines 3 to 5), expected the"
                + " heading once, on line 1",
            "note p1.csv:6: found Time, P1, expected the heading once, on line 1"),
        said(day));
    assertEquals("2 7", lines(day));
  }

  private static final String PROBES =
      "{\"column\": \"P1\", \"what\": \"internal temperature\", \"unit\": \"°F\", \"lot\":"
          + " \"A1\"}, {\"column\": \"P2\", \"what\": \"internal temperature\", \"unit\":"
          + " \"°F\", \"lot\": \"A2\"}";

  private static Day ofProbes(String log) {
    String layout = Days.layout(TIME, "");
    String columns = layout.substring(0, layout.indexOf("\"columns\": [")) + "\"columns\": [";
    return Days.read(
        Days.NEW_YORK, file("logs.json", columns + PROBES + "]}]}"), file("p1.csv", log));
  }

  @Test
  void each_probe_may_have_a_part_of_its_own() {
    Day day =
        ofProbes(
            """
            Time,P1
            2026-02-24 08:00:00,39
            2026-02-24 08:01:00,40
            Time,P2
            2026-02-24 08:00:00,59
            2026-02-24 08:01:00,60
            """);
    assertEquals(
        List.of("note p1.csv:4: found Time, P2, expected the heading once, on line 1"), said(day));
    assertEquals(
        List.of("2: 2026-02-24T13:00:00Z 39 °F", "3: 2026-02-24T13:01:00Z 40 °F"),
        samples(day.series().get(0)));
    assertEquals(
        List.of("5: 2026-02-24T13:00:00Z 59 °F", "6: 2026-02-24T13:01:00Z 60 °F"),
        samples(day.series().get(1)));
  }

  @Test
  void a_probe_that_no_part_has_is_missing() {
    Day day = ofProbes("Time,P1\n2026-02-24 08:00:00,39\nTime,P1\n2026-02-24 08:01:00,40\n");
    assertEquals(
        List.of(
            "note p1.csv:3: found Time, P1, expected the heading once, on line 1",
            "broken p1.csv:1:P2: found no column \"P2\" in Time, P1, expected the columns that"
                + " logs.json names"),
        said(day).stream().sorted(java.util.Comparator.reverseOrder()).toList());
    assertEquals(List.of(), day.series());
  }

  /** Read by the first heading, the rows below would be those of another probe. */
  @Test
  void a_row_of_words_that_may_be_another_heading_is_asked_about() {
    String log = "Time,P1\n2026-02-24 08:00:00,39\n%s\n2026-02-24 08:01:00,59\n";
    assertEquals(
        List.of(
            "note p1.csv:3:Time: found Stamp, expected yyyy-MM-dd HH:mm:ss",
            "ask p1.csv:3: found Stamp, Probe B, expected the words of line 1 where another part"
                + " begins; its rows were read by those"),
        said(Days.log(TIME, log.formatted("Stamp,Probe B"))));
    for (String row : List.of("hh:mm,°F", "Logger stopped,", "End,---", "# clock checked")) {
      assertEquals(1, said(Days.log(TIME, log.formatted(row))).size(), row);
    }
  }

  @Test
  void what_a_logger_says_about_itself_between_its_parts_is_no_reading() {
    Day day =
        Days.log(
            TIME,
            """
            Time,P1
            2026-02-24 08:00:00,39
            Serial,77
            Firmware,1.2,of,May
            Started,2026-02-24
            Time,P1
            2026-02-24 08:01:00,40
            Minimum,39
            Max,40
            """);
    assertEquals(
        List.of(
            "note p1.csv:5:Time: found Started, expected yyyy-MM-dd HH:mm:ss",
            "note p1.csv:3:Time: found Serial (2 rows, lines 3 to 4), expected yyyy-MM-dd HH:mm:ss",
            "note p1.csv:8:Time: found Minimum (2 rows, lines 8 to 9), expected yyyy-MM-dd"
                + " HH:mm:ss",
            "note p1.csv:6: found Time, P1, expected the heading once, on line 1"),
        said(day));
    assertEquals("2 7", lines(day));
  }

  @Test
  void a_number_beside_words_among_the_rows_is_a_reading_without_its_time() {
    for (String label : List.of("no clock", "ERR", "#####", "Min", "")) {
      String log = "Time,P1\n2026-02-24 08:00:00,39\n" + label + ",58\n2026-02-24 08:01:00,39\n";
      assertEquals("stop", said(Days.log(TIME, log)).get(0).substring(0, 4), label);
    }
    String log = "Time,P1\n2026-02-24 08:00:00,39\nno clock,58\n";
    assertEquals("stop", said(Days.log(TIME, log)).get(0).substring(0, 4));
  }

  @Test
  void rows_of_one_minute_are_kept_and_noted_once() {
    String log =
        """
        Time,P1
        2026-02-24 08:00,1
        2026-02-24 08:00,2
        2026-02-24 08:00,2
        2026-02-24 08:01,3
        2026-02-24 08:01,4
        2026-02-24 08:02,5
        """;
    Day day = Days.log(MINUTES, log);
    assertEquals(
        List.of(
            "note p1.csv:3:Time: found several rows of one minute (2 rows, lines 3 to 6), expected"
                + " the seconds, which a spreadsheet may have dropped; each row counts as the"
                + " worst second of its minute",
            "note p1.csv:4: found the readings of line 3 once more, expected each once"),
        said(day));
    assertEquals("2 3 5 6 7", lines(day));
    assertEquals(60_000, day.series().get(0).precisionMillis());
  }

  private static List<Fault> joined(List<Series> joined, Day day) {
    Readings.Joined all = Readings.joined(day.series());
    joined.addAll(all.series());
    return all.faults();
  }

  private static Day two(String first, String second) {
    return Days.read(
        Days.NEW_YORK,
        file("logs.json", Days.layout(TIME, "")),
        file("p1.csv", first),
        file("p2.csv", second));
  }

  @Test
  void two_exports_of_one_probe_are_joined_and_what_both_have_is_taken_once() {
    Day day = two(log("08:00 1", "08:01 2", "08:02 3"), log("08:01 2", "08:02 3", "08:03 4"));
    List<Series> joined = new ArrayList<>();
    List<Fault> faults = joined(joined, day);
    assertEquals(1, joined.size());
    assertEquals("2 3 4 p2:4", lines(joined.get(0).samples()));
    assertEquals(
        List.of(
            "2026-02-24/p2.csv:2:P1: found the reading of 2026-02-24/p1.csv:3 once more (2 rows,"
                + " lines 2 to 3), expected each once"),
        faults.stream().map(Fault::toString).toList());
  }

  @Test
  void two_exports_that_read_otherwise_at_one_time_are_asked_about() {
    Day day = two(log("08:00 1", "08:01 2"), log("08:01 9", "08:02 3"));
    List<Series> joined = new ArrayList<>();
    List<Fault> faults = joined(joined, day);
    assertEquals("2 3 p2:2 p2:3", lines(joined.get(0).samples()));
    assertEquals(
        List.of(
            "note 2026-02-24/p2.csv:2:P1: found another value than 2026-02-24/p1.csv:3, expected"
                + " one reading of a probe at a time; both are counted"),
        faults.stream().map(fault -> fault.severity().word() + " " + fault).toList());
  }

  @Test
  void two_logs_that_follow_each_other_are_one_series() {
    Day day = two(log("08:02 3", "08:03 4"), log("08:00 1", "08:01 2"));
    List<Series> joined = new ArrayList<>();
    assertEquals(List.of(), joined(joined, day));
    assertEquals("p2:2 p2:3 2 3", lines(joined.get(0).samples()));
  }

  @Test
  void logs_of_two_instruments_are_two_probes() {
    String other =
        "{\"logs\": ["
            + Days.layout(TIME, "").replace("p*", "p1").replaceAll("^.{10}|..$", "")
            + ", "
            + Days.layout(TIME, "")
                .replace("p*", "p2")
                .replace("LG-A", "LG-B")
                .replaceAll("^.{10}|..$", "")
            + "]}";
    Day day =
        Days.read(
            Days.NEW_YORK,
            file("logs.json", other),
            file("p1.csv", log("08:00 1")),
            file("p2.csv", log("08:00 2")));
    List<Series> joined = new ArrayList<>();
    assertEquals(List.of(), joined(joined, day));
    assertEquals(2, joined.size());
  }
}
