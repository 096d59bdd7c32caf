package org.flitchbook.reading;

import static org.flitchbook.reading.Days.said;
import static org.flitchbook.reading.Days.samples;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The hour that comes twice hides an hour of cooling from whoever subtracts what the clock on the
 * wall said; the one that is skipped adds one.
 */
final class ClockChangesTest {

  private static final ZoneId NEW_YORK = ZoneId.of("America/New_York");
  private static final DateTimeFormatter SECONDS =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm:ss", Locale.ROOT);
  private static final String TIME =
      "\"pattern\": \"yyyy-MM-dd HH:mm:ss\", \"zone\": \"America/New_York\"";
  private static final String UNRESOLVED =
      "expected times with one meaning; neither a step back nor a steady interval tells the two"
          + " apart";

  /** What a logger that follows the wall clock writes from one instant to another. */
  private static List<String> rows(String from, String to, Duration interval, ZoneId zone) {
    List<String> rows = new ArrayList<>();
    Instant end = Instant.parse(to);
    for (Instant at = Instant.parse(from); !at.isAfter(end); at = at.plus(interval)) {
      rows.add(LocalDateTime.ofInstant(at, zone).format(SECONDS) + "," + rows.size());
    }
    return rows;
  }

  private static List<String> rows(String from, String to, int seconds) {
    return rows(
        "2026-11-01T" + from + ":00Z",
        "2026-11-01T" + to + ":00Z",
        Duration.ofSeconds(seconds),
        NEW_YORK);
  }

  private static Day read(List<String> rows) {
    return Days.log(TIME, "Time,P1\n" + String.join("\n", rows) + "\n");
  }

  private static List<String> times(Day day) {
    return samples(day.series().get(0)).stream().map(s -> s.split(" ", -1)[1]).toList();
  }

  /** Clocks in Greenwich's time; the change in New York is at 06:00. */
  @ParameterizedTest
  @CsvSource({
    "03:00, 08:00, 60, 05:00 to 06:59 as on a clock of the world",
    "03:00, 08:00, 300, five minutes",
    "04:59, 07:00, 60, just over both ends",
    "05:10, 06:20, 60, begins and ends in it",
    "05:10, 08:00, 60, begins in the first",
    "03:00, 06:20, 60, ends in the second",
    "03:00, 05:40, 60, ends in the first",
    "06:20, 08:00, 60, begins in the second",
    "00:00, 12:00, 1800, half an hour",
    "00:00, 12:00, 3600, an hour: the same time twice",
    "01:00, 13:00, 7200, two hours",
    "03:00, 08:00, 7, seven seconds"
  })
  void the_doubled_hour_is_told_apart_by_order_and_a_steady_interval(
      String from, String to, int seconds, String why) {
    List<String> rows = rows(from, to, seconds);
    Day day = read(rows);
    List<String> times = times(day);
    assertEquals(rows.size(), times.size(), why + said(day));
    Instant begin = Instant.parse("2026-11-01T" + from + ":00Z");
    for (int i = 0; i < rows.size(); i++) {
      assertEquals(begin.plusSeconds((long) i * seconds).toString(), times.get(i), why);
    }
    assertEquals(1, day.faults().size(), said(day).toString());
    assertTrue(said(day).get(0).startsWith("note p1.csv"), said(day).toString());
    assertEquals("autumn clock change", day.faults().get(0).rule());
  }

  @Test
  void the_note_names_the_row_at_which_the_clock_was_set_back_and_how_it_was_found() {
    assertEquals(
        List.of(
            "note p1.csv:182:Time: found 2026-11-01 01:00:00 behind 2026-11-01 01:59:00 in"
                + " America/New_York, expected times with one meaning; by the order of the rows and"
                + " their steady 60 s it is the second time, at -05:00 from this line on"),
        said(read(rows("03:00", "08:00", 60))));
    assertEquals(
        List.of(
            "note p1.csv:122:Time: found 2026-11-01 01:00:00, which the clock showed twice in"
                + " America/New_York, expected times with one meaning; by the order of the rows and"
                + " their steady 60 s it is the first time, at -04:00"),
        said(read(rows("03:00", "05:40", 60))));
  }

  @Test
  void a_row_left_out_elsewhere_does_not_touch_the_step_back() {
    List<String> rows = rows("04:00", "08:00", 60);
    rows.remove(150);
    rows.remove(100);
    rows.remove(70);
    Day day = read(rows);
    assertEquals(1, day.faults().size(), said(day).toString());
    assertEquals("2026-11-01T05:59:00Z", times(day).get(117));
    assertEquals("2026-11-01T06:00:00Z", times(day).get(118));
  }

  @Test
  void seconds_that_jitter_are_steady() {
    List<String> rows = new ArrayList<>();
    for (String row : rows("04:00", "08:00", 60)) {
      rows.add(rows.size() % 3 == 0 ? row.replace(":00,", ":01,") : row);
    }
    assertEquals(1, read(rows).faults().size());
    assertEquals(rows.size(), times(read(rows)).size());
  }

  /** Each would pass the lot if it were read as the clock on the wall shows it. */
  @ParameterizedTest
  @CsvSource({
    "05:00, 06:00, the first hour is missing",
    "06:00, 07:00, the second hour is missing",
    "05:30, 06:30, half of each is missing",
    "05:55, 06:10, the step itself is missing"
  })
  void an_hour_that_was_not_logged_twice_is_a_stop(String from, String to, String why) {
    List<String> rows = rows("04:00", "08:00", 60);
    List<String> hole = rows(from, to, 60);
    hole.remove(hole.size() - 1);
    rows.subList(minutes(from) - 240, minutes(from) - 240 + hole.size()).clear();
    Day day = read(rows);
    assertTrue(
        said(day).stream()
            .anyMatch(s -> s.startsWith("stop") && s.contains("twice in America/New_York")),
        why + said(day));
    assertTrue(
        times(day).stream()
            .noneMatch(
                at ->
                    at.compareTo("2026-11-01T05:00:00Z") >= 0
                        && at.compareTo("2026-11-01T07:00:00Z") < 0),
        why);
  }

  private static int minutes(String clock) {
    return Integer.parseInt(clock.substring(0, 2)) * 60 + Integer.parseInt(clock.substring(3));
  }

  @Test
  void a_clock_that_was_set_back_by_something_else_is_a_stop() {
    List<String> rows = rows("04:00", "05:30", 60);
    rows.addAll(rows("06:10", "08:00", 60));
    Day day = read(rows);
    assertEquals(
        "stop p1.csv:62:Time: found 2026-11-01 01:00:00, which the clock showed twice in"
            + " America/New_York (81 rows, lines 62 to 142), "
            + UNRESOLVED,
        said(day).get(0));
  }

  @Test
  void a_log_of_the_doubled_hour_alone_has_nothing_to_hold_it_to() {
    Day day = read(rows("05:10", "05:50", 60));
    assertEquals(
        List.of(
            "stop p1.csv:2:Time: found 2026-11-01 01:10:00, which the clock showed twice in"
                + " America/New_York (41 rows, lines 2 to 42), "
                + UNRESOLVED),
        said(day));
  }

  @Test
  void three_rows_show_no_steady_interval() {
    assertEquals(
        "stop",
        said(read(
                List.of("2026-11-01 00:58:00,1", "2026-11-01 00:59:00,2", "2026-11-01 01:00:00,3")))
            .get(0)
            .substring(0, 4));
  }

  @Test
  void a_log_that_stands_newest_first_is_turned_round_before() {
    List<String> rows = rows("03:00", "08:00", 60);
    List<String> turned = new ArrayList<>();
    rows.forEach(row -> turned.add(0, row));
    Day day =
        Days.log(TIME + ", \"order\": \"newest first\"", "Time,P1\n" + String.join("\n", turned));
    assertEquals(times(read(rows)), times(day));
    assertEquals("autumn clock change", day.faults().get(0).rule());
  }

  @Test
  void a_zone_that_is_set_back_by_half_an_hour_is_resolved_too() {
    ZoneId zone = ZoneId.of("Australia/Lord_Howe");
    List<String> rows =
        rows("2026-04-04T12:00:00Z", "2026-04-04T18:00:00Z", Duration.ofMinutes(1), zone);
    Day day =
        Days.log(
            TIME.replace("America/New_York", zone.getId()),
            "Time,P1\n" + String.join("\n", rows) + "\n");
    assertEquals(rows.size(), times(day).size(), said(day).toString());
    assertEquals("2026-04-04T18:00:00Z", times(day).get(rows.size() - 1));
  }

  /** Without it a span of the spring night would seem an hour longer than it was. */
  @Test
  void the_hour_that_spring_skips_is_no_gap() {
    List<String> rows =
        rows("2026-03-08T05:00:00Z", "2026-03-08T09:00:00Z", Duration.ofMinutes(1), NEW_YORK);
    Day day = read(rows);
    assertEquals(
        List.of(
            "note p1.csv:122:Time: found 2026-03-08 03:00:00 behind 2026-03-08 01:59:00, expected the"
                + " hour that the clock skipped in America/New_York; 60 s went by"),
        said(day));
    assertEquals("2026-03-08T07:00:00Z", times(day).get(120));
    rows.subList(110, 130).clear();
    assertEquals(List.of(), said(read(rows)));
  }

  @Test
  void a_from_in_the_doubled_hour_needs_its_offset() {
    String from = "\"lot\": \"A1\", \"from\": \"2026-11-01 01:30\"";
    String layout = Days.layout(TIME, "").replace("\"lot\": \"A1\"", from);
    String log = "Time,P1\n" + String.join("\n", rows("03:00", "08:00", 60)) + "\n";
    Day open = Days.read(Days.NEW_YORK, Days.file("logs.json", layout), Days.file("p1.csv", log));
    assertEquals(
        "broken logs.json:1:logs[0].columns[0].from: found 2026-11-01 01:30, which the clock showed"
            + " twice in America/New_York, expected an offset behind it, -04:00 or -05:00",
        said(open).get(0));
    Day stated =
        Days.read(
            Days.NEW_YORK,
            Days.file("logs.json", layout.replace("01:30", "01:30-05:00")),
            Days.file("p1.csv", log));
    assertEquals("2026-11-01T06:30:00Z", times(stated).get(0));
  }
}
