package org.flitchbook.lot;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.util.List;
import org.flitchbook.plan.Plan;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;
import org.junit.jupiter.api.Test;

/** Where lots lay, and which readings serve them there. */
final class PlacesTest {

  private static final String CURE = "2026-02-16/cure.csv";

  private static String product(String lot) {
    return lot + ",2026-02-16 05:00,product,JTB,,,MA,,,,\n";
  }

  private static String event(String lot, String time, String what, String item) {
    return lot + ",2026-02-16 " + time + "," + what + "," + item + ",,,MA,,,,\n";
  }

  private static String cooler(String lot, String time, String place, String level) {
    String end = "," + level + ",°F,MA,HT-3,,,\n";
    return lot + ",2026-02-16 " + time + ",cooler temperature," + place + end;
  }

  private static List<String> coolers(Lots book, String lot, Step step) {
    return book.lot(lot).orElseThrow().tracks(What.COOLER_TEMPERATURE, step).stream()
        .flatMap(track -> Books.readings(track).stream())
        .toList();
  }

  private static List<String> visits(Lots book, String lot) {
    Stay stay = book.lot(lot).orElseThrow().stay(Step.CURE).orElseThrow();
    return stay.visits().stream()
        .map(
            v ->
                v.place()
                    + " "
                    + time(v.from().written())
                    + " "
                    + v.until().map(m -> time(m.written())).orElse("on"))
        .toList();
  }

  private static String time(Instant instant) {
    return instant.toString().substring(11, 16);
  }

  @Test
  void a_lot_that_was_moved_visited_two_places() {
    Lots book =
        Books.of(
            CURE,
            product("A1")
                + event("A1", "06:00", "into cure", "F1")
                + event("A1", "09:00", "into cure", "F2")
                + event("A1", "12:00", "out of cure", "")
                + cooler("A1", "07:00", "F1", "37")
                + cooler("", "08:00", "F2", "50")
                + cooler("", "08:30", "F1", "38")
                + cooler("", "10:00", "F1", "60")
                + cooler("", "11:00", "F2", "39")
                + cooler("", "13:00", "F2", "70"));
    assertEquals(List.of(), Books.said(book));
    assertEquals(List.of("F1 11:00 14:00", "F2 14:00 17:00"), visits(book, "A1"));
    assertEquals(List.of("12:00 37*", "13:30 38*", "16:00 39*"), coolers(book, "A1", Step.CURE));
  }

  @Test
  void a_lot_that_came_out_and_went_in_again_is_in() {
    Lots book =
        Books.of(
            CURE,
            product("A1")
                + event("A1", "06:00", "into cure", "F1")
                + event("A1", "08:00", "out of cure", "")
                + event("A1", "09:00", "into cure", "F2")
                + cooler("", "08:30", "F1", "60")
                + cooler("", "10:00", "F2", "39"));
    assertEquals(List.of("F1 11:00 13:00", "F2 14:00 on"), visits(book, "A1"));
    assertTrue(book.lot("A1").orElseThrow().isRunning(Step.CURE));
    assertEquals(List.of("15:00 39*"), coolers(book, "A1", Step.CURE));
  }

  @Test
  void pieces_lie_in_their_own_places() {
    Lots book =
        Books.of(
            CURE,
            product("A1")
                + event("A1", "06:00", "into cure", "F1").replace(",\n", ",P1\n")
                + event("A1", "07:00", "into cure", "F2").replace(",\n", ",P2\n")
                + event("A1", "12:00", "out of cure", ""));
    assertEquals(List.of("F1 11:00 17:00", "F2 12:00 17:00"), visits(book, "A1"));
  }

  @Test
  void a_reading_of_a_place_serves_every_lot_in_it_and_none_elsewhere() {
    Lots book =
        Books.of(
            CURE,
            product("A1")
                + product("B2")
                + product("C3")
                + event("A1", "06:00", "into cure", "F1")
                + event("B2", "06:00", "into cure", "F1")
                + event("C3", "06:00", "into cure", "F2")
                + cooler("A1", "07:00", "F1", "37"));
    assertEquals(List.of("12:00 37*"), coolers(book, "A1", Step.CURE));
    assertEquals(List.of("12:00 37*"), coolers(book, "B2", Step.CURE));
    assertEquals(List.of(), coolers(book, "C3", Step.CURE));
  }

  @Test
  void a_lots_own_reading_without_a_place_is_its_own_alone() {
    Lots book =
        Books.of(
            CURE,
            product("A1")
                + product("B2")
                + event("A1", "06:00", "into cure", "F1")
                + event("B2", "06:00", "into cure", "F1")
                + cooler("A1", "07:00", "", "37"));
    assertEquals(List.of("12:00 37*"), coolers(book, "A1", Step.CURE));
    assertEquals(List.of(), coolers(book, "B2", Step.CURE));
  }

  @Test
  void a_reading_of_a_place_where_the_lot_does_not_lie_does_not_count_for_it() {
    Lots book =
        Books.of(
            CURE,
            product("A1")
                + event("A1", "06:00", "into cure", "F1")
                + cooler("A1", "07:00", "F2", "37"));
    assertEquals(List.of(), coolers(book, "A1", Step.CURE));
  }

  @Test
  void a_reading_by_an_instrument_of_no_plan_is_told_and_not_used() {
    Lots book =
        Books.of(
            CURE,
            product("A1")
                + event("A1", "06:00", "into cure", "F1")
                + cooler("A1", "07:00", "F1", "37").replace("HT-3", "HT-9"));
    assertEquals(1, Books.said(book).size());
    assertEquals(List.of(), coolers(book, "A1", Step.CURE));
  }

  @Test
  void humidity_from_an_instrument_without_a_humidity_accuracy_is_a_stop_and_not_used() {
    Lots book =
        Books.of(
            "2026-02-16/dry.csv",
            event("A1", "06:00", "into drying", "F2")
                + "A1,2026-02-16 08:00,humidity,F2,66,%,MA,HT-3,,,\n",
            CURE,
            product("A1"));
    assertEquals(
        List.of(
            "stop A1 2026-02-16/dry.csv:3:instrument: found HT-3, expected an instrument with its"
                + " \"humidityAccuracy\" in the plan"),
        Books.said(book));
    assertEquals(List.of(), book.lot("A1").orElseThrow().tracks(What.HUMIDITY, Step.DRY));
  }

  @Test
  void what_lies_behind_the_time_looked_at_is_not_seen() {
    Plan plan = Books.plan();
    Lots book =
        Books.of(
            plan,
            Instant.parse("2026-02-16T13:00:00Z"),
            CURE,
            product("A1")
                + event("A1", "06:00", "into cure", "F1")
                + cooler("A1", "07:00", "F1", "37")
                + cooler("A1", "08:01", "F1", "38")
                + event("A1", "09:00", "out of cure", ""));
    assertEquals(List.of("12:00 37*"), coolers(book, "A1", Step.CURE));
    assertTrue(book.lot("A1").orElseThrow().isRunning(Step.CURE));
  }
}
