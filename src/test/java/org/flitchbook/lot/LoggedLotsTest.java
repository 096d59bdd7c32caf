package org.flitchbook.lot;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.flitchbook.input.Fault;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;
import org.flitchbook.sums.Shift;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What lots take from probe logs. */
final class LoggedLotsTest {

  private static final String DAY = "2026-02-16/";
  private static final String CORE =
      "{\"column\": \"P1\", \"what\": \"internal temperature\", \"unit\": \"°F\", \"lot\": \"A1\"}";
  private static final String AIR =
      "{\"column\": \"P1\", \"what\": \"chamber temperature\", \"unit\": \"°F\", \"place\":"
          + " \"SM\"}";

  private static String layout(String column) {
    return "{\"logs\": [{\"files\": \"log.csv\", \"instrument\": \"LG-A\", \"time\": {\"column\":"
        + " \"Time\", \"pattern\": \"yyyy-MM-dd HH:mm\", \"zone\": \"America/New_York\"},"
        + " \"columns\": ["
        + column
        + "]}]}";
  }

  private static String log(String... rows) {
    return "Time,P1\n"
        + String.join("\n", Arrays.stream(rows).map(row -> "2026-02-16 " + row).toList())
        + "\n";
  }

  private static String lot(String lot, String into, String out) {
    return lot
        + ",2026-02-16 "
        + into
        + ",into smoke,SM,,,MA,,,,\n"
        + lot
        + ",2026-02-16 "
        + out
        + ",out of smoke,,,,MA,,,,\n";
  }

  private static Lots book(String column, String log, String smoke, String... more) {
    List<String> files =
        new ArrayList<>(
            List.of(
                DAY + "cure.csv",
                """
                A1,2026-02-16 05:00,product,JTB,,,MA,,,,
                B2,2026-02-16 05:00,product,JTB,,,MA,,,,
                """,
                DAY + "logs.json",
                layout(column),
                DAY + "log.csv",
                log,
                DAY + "smoke.csv",
                smoke));
    files.addAll(Arrays.asList(more));
    return Books.of(files.toArray(String[]::new));
  }

  private static Track track(Lots book, String lot, What what) {
    return book.lot(lot).orElseThrow().tracks(what, Step.SMOKE).get(0);
  }

  @Test
  void a_places_log_is_cut_to_the_time_that_each_lot_lay_there() {
    Lots book =
        book(
            AIR,
            log("06:00,100", "07:00,110", "08:00,120", "09:00,130", "10:00,140"),
            lot("A1", "06:30", "08:00") + lot("B2", "08:00", "09:30"));
    assertEquals(List.of(), Books.said(book));
    assertEquals(
        List.of("12:00 110", "13:00 120"),
        Books.readings(track(book, "A1", What.CHAMBER_TEMPERATURE)));
    assertEquals(
        List.of("13:00 120", "14:00 130"),
        Books.readings(track(book, "B2", What.CHAMBER_TEMPERATURE)));
  }

  @Test
  void hand_readings_are_laid_in_by_their_time() {
    String by = "A1,2026-02-16 %s,internal temperature,,%s,°F,MA,HT-3,,,\n";
    Lots book =
        book(
            CORE,
            log("06:00,40", "07:00,50", "08:00,60"),
            lot("A1", "06:00", "10:00")
                + by.formatted("05:59", "39")
                + by.formatted("09:00", "61")
                + by.formatted("07:00", "51")
                + by.formatted("06:30", "45"));
    Track track = track(book, "A1", What.INTERNAL_TEMPERATURE);
    assertEquals(
        List.of("11:00 40", "11:30 45*", "12:00 50", "12:00 51*", "13:00 60", "14:00 61*"),
        Books.readings(track));
    assertEquals("2026-02-16/log.csv:2:P1", track.place(0).toString());
    assertEquals("2026-02-16/smoke.csv:7", track.place(1).toString());
    assertEquals(60_000, track.latest(0) - track.earliest(0));
    assertEquals(60_000, track.latest(1) - track.earliest(1));
  }

  /** One probe for two lots, 38 and 52 mm thick: the least that its piece can have been thick. */
  @ParameterizedTest
  @CsvSource({"'', false, 38 mm", "A1, true, 38 mm", "B2, true, 52 mm", "B2 x, true, ''"})
  void a_probe_of_two_lots_sat_in_a_piece_of_one(String seat, boolean stated, String thickness) {
    String thick = "%s,2026-02-16 05:01,thickness,,%s,mm,MA,,,,\n";
    String piece = seat.isEmpty() ? "" : ", \"piece\": \"" + seat + "\"";
    Lots book =
        Books.of(
            DAY + "cure.csv",
            "A1,2026-02-16 05:00,product,JTB,,,MA,,,,\nB2,2026-02-16 05:00,product,JTB,,,MA,,,,\n"
                + thick.formatted("A1", "38")
                + thick.formatted("B2", "52"),
            DAY + "logs.json",
            layout(CORE.replace("\"lot\": \"A1\"", "\"lots\": [\"A1\", \"B2\"]" + piece)),
            DAY + "log.csv",
            log("07:00,60"),
            DAY + "smoke.csv",
            lot("A1", "06:00", "10:00") + lot("B2", "06:00", "10:00"));
    for (String lot : List.of("A1", "B2")) {
      Track.Piece sat = track(book, lot, What.INTERNAL_TEMPERATURE).piece();
      assertEquals(stated, sat.isStated());
      assertEquals(thickness, sat.thickness().map(Object::toString).orElse(""));
    }
  }

  /** A gap is longer than 3 usual intervals and 5 minutes. */
  @ParameterizedTest(name = "{0}: {1} ms")
  @CsvSource({
    "the median of the whole log though one reading is of the lot, 3_600_000, 00 01 02 03 04 06",
    "of five readings too, 3_600_000, 01 02 03 04 06",
    "of four so that 6 minutes are a gap, 100_000, 00 02 03 06",
    "of one, 100_000, 06"
  })
  void the_usual_interval_is_that_of_the_log(String fact, String millis, String hours) {
    String[] readings =
        Arrays.stream(hours.split(" ", -1)).map(hour -> hour + ":00,40").toArray(String[]::new);
    Lots book = book(CORE, log(readings), lot("A1", "06:00", "10:00"));
    Track track = track(book, "A1", What.INTERNAL_TEMPERATURE);
    assertEquals(1, track.size(), fact);
    assertEquals(Long.parseLong(millis.replace("_", "")), track.interval(), fact);
  }

  /** Accuracy of LG-A 0.5 °F: a probe that reads 0.3 °F too high may be 0.8 °F above the truth. */
  @ParameterizedTest
  @CsvSource({
    "32, 60.5, 59.5",
    "32.3, 60.5, 59.2",
    "31.6, 60.9, 59.5",
    "0.1 °C, 60.5, 59.32",
    "'', 60.5, 59.5"
  })
  void the_last_known_error_widens_the_side_on_which_it_lies(String ice, String up, String down) {
    String[] read = ice.split(" ", -1);
    String row = ",2026-02-16 04:00,ice point,,%s,%s,MA,LG-A,,,\n";
    String check = ice.isEmpty() ? "" : row.formatted(read[0], read.length > 1 ? read[1] : "°F");
    Lots book =
        book(CORE, log("07:00,60"), lot("A1", "06:00", "10:00"), DAY + "instruments.csv", check);
    Track track = track(book, "A1", What.INTERNAL_TEMPERATURE);
    assertEquals("60", Books.shown(track, 0, Shift.AS_WRITTEN));
    assertEquals(up, Books.shown(track, 0, Shift.UP));
    assertEquals(down, Books.shown(track, 0, Shift.DOWN));
  }

  /** 95 m are 311.67979… ft, so the error of the check has no end as a decimal. */
  @Test
  void an_error_without_an_end_is_held_a_little_too_wide() {
    String check = ",2026-02-16 04:00,boiling point,,212,°F,MA,HT-3,,,\n";
    String hand = "A1,2026-02-16 07:00,internal temperature,,60,°F,MA,HT-3,,,\n";
    Lots book =
        Books.of(
            Books.plan("310 ft", "95 m"),
            Books.LATE,
            DAY + "cure.csv",
            "A1,2026-02-16 05:00,product,JTB,,,MA,,,,\n",
            DAY + "smoke.csv",
            lot("A1", "06:00", "10:00") + hand,
            DAY + "instruments.csv",
            check);
    assertEquals(List.of(), Books.said(book));
    Track track = track(book, "A1", What.INTERNAL_TEMPERATURE);
    assertEquals("61", Books.shown(track, 0, Shift.UP));
    assertEquals("58.438976", Books.shown(track, 0, Shift.DOWN));
  }

  @Test
  void a_lot_that_a_log_alone_names_is_asked_about() {
    Lots book = book(CORE.replace("A1", "Z9"), log("07:00,60"), lot("A1", "06:00", "10:00"));
    assertEquals(
        List.of("ask 2026-02-16/log.csv:P1: found Z9, which no sheet knows, expected a lot's code"),
        Books.said(book));
    assertEquals(2, book.lots().size());
  }

  @Test
  void a_fault_of_a_row_is_told_for_each_lot_that_the_log_serves() {
    String said = " 2026-02-16/log.csv:3:Time: found x, expected yyyy-MM-dd HH:mm";
    String log = log("07:00,60", "09:00,70").replace("2026-02-16 09:00", "x");
    Lots both =
        book(
            CORE.replace("\"lot\": \"A1\"", "\"lots\": [\"A1\", \"B2\"]"),
            log,
            lot("A1", "06:00", "10:00"));
    assertEquals(List.of("stop A1" + said, "stop B2" + said), Books.said(both));
    Lots place = book(AIR, log, lot("A1", "06:00", "10:00") + lot("B2", "11:00", "12:00"));
    assertEquals(List.of("stop A1" + said), Books.said(place));
  }

  /** Two columns may be called the same: one that was read says nothing of the other. */
  @Test
  void a_probe_of_which_nothing_was_read_in_the_heat_is_no_matter_of_words() {
    String both =
        CORE + ", " + CORE.replace("P1", "P2").replace("\"unit\"", "\"item\": \"P1\", \"unit\"");
    String log = "Time,P1,P2\n2026-02-16 05:00,,60\n2026-02-16 07:00,60,\n";
    assertEquals(
        List.of(
            "stop A1 2026-02-16/log.csv: found no reading of P1 (column P2) while the lot was"
                + " smoked and chilled, expected readings of every probe that logs.json names for"
                + " the lot"),
        Books.said(book(both, log, lot("A1", "06:00", "10:00"))));
  }

  @Test
  void an_instrument_and_a_place_that_the_plan_does_not_know_are_told() {
    Lots book =
        Books.of(
            DAY + "cure.csv", "A1,2026-02-16 05:00,product,JTB,,,MA,,,,\n",
            DAY + "logs.json", layout(CORE).replace("LG-A", "LG-X"),
            DAY + "log.csv", log("07:00,60"),
            DAY + "smoke.csv", lot("A1", "06:00", "10:00"));
    assertEquals(
        List.of(
            "stop A1 2026-02-16/log.csv:P1: found LG-X, expected an instrument of the plan, in"
                + " logs.json"),
        Books.said(book));
    assertEquals(
        List.of("ask 2026-02-16/log.csv:P1: found SX, expected a place of the plan"),
        Books.said(book(AIR.replace("SM", "SX"), log("07:00,60"), lot("A1", "06:00", "10:00"))));
  }

  @Test
  void a_log_kept_by_a_scale_is_told() {
    Lots book =
        Books.of(
            DAY + "cure.csv", "A1,2026-02-16 05:00,product,JTB,,,MA,,,,\n",
            DAY + "logs.json", layout(CORE).replace("LG-A", "S-10"),
            DAY + "log.csv", log("07:00,60"),
            DAY + "smoke.csv", lot("A1", "06:00", "10:00"));
    assertEquals(
        List.of(
            "stop A1 2026-02-16/log.csv:P1: found S-10, a scale, expected a thermometer or logger,"
                + " in logs.json"),
        Books.said(book));
  }

  @Test
  void an_unknown_instrument_of_a_log_that_serves_nobody_is_told_too() {
    Lots book =
        Books.of(
            DAY + "logs.json",
            layout(AIR).replace("LG-A", "LG-X"),
            DAY + "log.csv",
            log("07:00,60"));
    assertEquals(
        List.of(
            "stop 2026-02-16/log.csv:P1: found LG-X, expected an instrument of the plan, in"
                + " logs.json"),
        Books.said(book));
  }

  @Test
  void the_last_time_read_may_be_a_logs() {
    String running = "A1,2026-02-16 06:00,into smoke,SM,,,MA,,,,\n";
    Lot lot = book(CORE, log("07:00,60", "09:30,70"), running).lot("A1").orElseThrow();
    assertEquals("2026-02-16T14:30:00Z", lot.lastTime().orElseThrow().toString());
  }

  /** A sensor of the cooler's air that logs.json gives to two lots. */
  @ParameterizedTest
  @CsvSource({"F1, F1, ''", "F1, F2, air of several places", "F1, SM, air of several places"})
  void the_air_of_lots_in_different_places_is_asked_about(String one, String other, String rule) {
    String lots = CORE.replace("\"lot\": \"A1\"", "\"lots\": [\"A1\", \"B2\"]");
    Lots book =
        book(
            lots.replace("internal", "cooler"),
            log("08:00,37.0", "12:00,37.0"),
            "A1,2026-02-16 13:00,weight,,4000,g,MA,S-10,,,\n",
            DAY + "chill.csv",
            "A1,2026-02-16 07:00,into chill,%s,,,MA,,,,\nB2,2026-02-16 07:00,into chill,%s,,,MA,,,,\n"
                .formatted(one, other));
    List<String> asked =
        book.lot("B2").orElseThrow().faults().stream()
            .map(Fault::rule)
            .filter(name -> name.equals("air of several places"))
            .toList();
    assertEquals(rule.isEmpty() ? List.of() : List.of(rule), asked);
  }
}
