package org.flitchbook.lot;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;
import org.junit.jupiter.api.Test;

final class ExampleBookTest {

  private final Lots book = Books.example();
  private final Lot lot = book.lot("26047-B1").orElseThrow();

  @Test
  void it_assembles_without_a_fault() {
    assertEquals(List.of(), Books.said(book));
    assertEquals(1, book.lots().size());
    assertEquals("JTB", lot.product().orElseThrow().code());
    assertEquals(List.of(), lot.corrections());
  }

  @Test
  void its_lot_passes_through_five_steps() {
    assertEquals(
        List.of(
            "cure 2026-02-16T14:40:00Z 2026-02-23T20:00:00Z F1",
            "soak 2026-02-23T20:10:00Z 2026-02-23T21:10:00Z SK",
            "dry 2026-02-23T21:20:00Z 2026-02-24T12:50:00Z F2",
            "smoke 2026-02-24T13:02:00Z 2026-02-24T16:08:00Z SM",
            "chill 2026-02-24T16:38:00Z 2026-02-24T23:00:00Z F2"),
        lot.stays().stream().map(ExampleBookTest::shown).toList());
    assertFalse(lot.isRunning());
  }

  private static String shown(Stay stay) {
    return stay.step().word()
        + " "
        + stay.into().time().written()
        + " "
        + stay.out().orElseThrow().time().written()
        + " "
        + String.join(" ", stay.visits().stream().map(Stay.Visit::place).toList());
  }

  @Test
  void it_was_filed_on_nine_days() {
    assertEquals(9, lot.filed().size());
    assertEquals(LocalDate.of(2026, 2, 16), lot.filed().first());
    assertEquals(LocalDate.of(2026, 2, 24), lot.filed().last());
  }

  @Test
  void its_core_is_one_track_over_smoke_and_chill() {
    assertEquals(1, lot.tracks(What.INTERNAL_TEMPERATURE, Step.SMOKE).size());
    Track core = lot.tracks(What.INTERNAL_TEMPERATURE, Step.CHILL).get(0);
    List<String> readings = Books.readings(core);
    assertEquals("P1 2026-02-24/probes-a.csv:P1", core.called() + " " + core.origin());
    assertEquals("13:02 39.2", readings.get(0));
    assertTrue(readings.contains("16:07 150.4*"), "the hand check in the smoker");
    assertTrue(readings.contains("21:30 39*"), "the hand check in the chill");
    assertEquals(60_000, core.interval());
  }

  @Test
  void its_smoker_is_read_until_it_left() {
    Track air = lot.tracks(What.CHAMBER_TEMPERATURE, Step.SMOKE).get(0);
    List<String> readings = Books.readings(air);
    assertTrue(readings.get(0).startsWith("13:02 "), readings.get(0));
    assertTrue(readings.get(readings.size() - 1).startsWith("16:08 "));
  }

  @Test
  void its_coolers_and_its_water_were_read_by_hand() {
    Track cure = lot.tracks(What.COOLER_TEMPERATURE, Step.CURE).get(0);
    assertEquals("hand", cure.called());
    assertEquals(15, cure.size());
    assertEquals(0, cure.interval());
    assertEquals(3, lot.tracks(What.COOLER_TEMPERATURE, Step.DRY).get(0).size());
    assertEquals(1, lot.tracks(What.COOLER_TEMPERATURE, Step.CHILL).get(0).size());
    assertEquals(
        List.of("20:11 39.5*", "21:08 40.2*"),
        Books.readings(lot.tracks(What.WATER_TEMPERATURE, Step.SOAK).get(0)));
  }

  @Test
  void its_instruments_were_checked() {
    assertEquals(
        List.of("HT-3 0.4 °F true", "LG-A 0.1 °F true", "S-10 0 g true", "S-01 0 g true"),
        book.register().checks().stream()
            .map(check -> check.instrument().id() + " " + check.error() + " " + check.passed())
            .toList());
  }

  @Test
  void the_last_time_read_is_the_last_of_entries_and_logs() {
    assertEquals("2026-02-24T23:02:00Z", lot.lastTime().orElseThrow().toString());
  }
}
