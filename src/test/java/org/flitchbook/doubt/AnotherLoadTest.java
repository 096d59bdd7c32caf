package org.flitchbook.doubt;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.flitchbook.check.Bench;
import org.flitchbook.input.Fault;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A probe shows what was with the piece that it sat in, and nothing of another load. */
final class AnotherLoadTest {

  private static final String COOLING = "us.b99.cooling-1";
  private static final String GOOD =
      "08:00:00..10:59:00/60 45>150; 11:00:00..12:00:00/60 130>80; 12:01:00..15:00:00/60 79>35";
  private static final String[] WAY = {
    "smoke,08:00:00,into smoke,SM",
    "smoke,11:00:00,out of smoke",
    "chill,11:05:00,into chill,F2",
    "chill,18:00:00,out of chill"
  };

  private static Bench lot() {
    return Bench.book().rule(COOLING);
  }

  private static Bench shared(Bench bench, String seat) {
    String piece = seat.isEmpty() ? "" : ", \"piece\": \"" + seat + "\"";
    String of = "\"lots\": [\"A1\", \"B2\"]" + piece;
    return bench.log("P1", "internal temperature", "°F", "LG-0", of, GOOD);
  }

  private static String found(Bench bench) {
    return bench.doubts().stream()
        .filter(fault -> fault.rule().equals("probe in another load"))
        .map(fault -> fault.found().toString())
        .reduce("", (one, other) -> one + (one.isEmpty() ? "" : "; ") + other);
  }

  /** A1 goes its usual way; one row of B2 is another one. The probe sat in B2. */
  @ParameterizedTest(name = "{1}: {2}")
  @CsvSource(
      delimiter = '|',
      value = {
        "0 | smoke,08:00:00,into smoke,SM    | false",
        "0 | smoke,08:15:00,into smoke,SM    | false",
        "0 | smoke,08:15:01,into smoke,SM    | true",
        "0 | smoke,07:45:00,into smoke,SM    | false",
        "0 | smoke,07:44:59,into smoke,SM    | true",
        "0 | smoke,08:00:00,into smoke,SM2   | true",
        "1 | smoke,11:15:00,out of smoke     | false",
        "1 | smoke,11:15:01,out of smoke     | true",
        "2 | chill,11:20:00,into chill,F2    | false",
        "2 | chill,11:20:01,into chill,F2    | true",
        "2 | chill,11:05:00,into chill,F1    | true",
        "3 | chill,14:45:00,out of chill     | false",
        "3 | chill,14:44:59,out of chill     | true",
        "3 | chill,20:00:00,out of chill     | false",
      })
  void a_lot_is_shown_by_a_probe_in_a_lot_that_was_with_it(int row, String line, boolean asked) {
    String[] other = WAY.clone();
    other[row] = line;
    assertEquals(asked, !found(shared(lot().write(WAY).writeOf("B2", other), "B2")).isEmpty());
    assertEquals("", found(shared(lot().write(WAY).writeOf("B2", other), "A1")));
    assertEquals(asked, !found(shared(lot().write(WAY).writeOf("B2", other), "")).isEmpty());
  }

  @ParameterizedTest
  @CsvSource({"smoke,2,into smoke", "smoke,1,out of smoke", "chill,2,into chill"})
  void a_row_that_only_one_of_them_has_tells_them_apart(String sheet, int row, String what) {
    String[] other = WAY.clone();
    other[row == 2 && sheet.equals("smoke") ? 0 : row] = sheet + ",08:30:00,weight,,4000,g";
    String found = found(shared(lot().write(WAY).writeOf("B2", other), "B2"));
    assertTrue(found.startsWith("A1 not with B2, in which P1 sat: " + what), found);
  }

  @Test
  void another_cooler_later_on_tells_apart_only_what_was_still_read() {
    String early = "chill,14:00:00,into chill,F1";
    String late = "chill,14:50:00,into chill,F1";
    Bench moved = lot().write(WAY).writeOf("B2", WAY).writeOf("B2", early);
    assertEquals(
        "A1 not with B2, in which P1 sat: into chill at 14:00 (2026-02-24/chill.csv:6)",
        found(shared(moved, "B2")));
    assertEquals("", found(shared(lot().write(WAY).writeOf("B2", WAY).writeOf("B2", late), "B2")));
  }

  /** Two pieces of one lot, a in the smoker at 8:00. */
  @ParameterizedTest(name = "b {0}, probe in {1}: {2}")
  @CsvSource(
      delimiter = '|',
      value = {
        "08:00:00,into smoke,SM  | a   | ''",
        "08:15:00,into smoke,SM  | a   | ''",
        "08:15:01,into smoke,SM  | a   | A1 b not with A1 a, in which P1 sat: into smoke at"
            + " 08:15:01",
        "08:15:01,into smoke,SM  | b   | A1 a not with A1 b, in which P1 sat: into smoke at 08:00",
        "09:30:00,into smoke,SM  | a b | ''",
        "08:00:00,into smoke,SM2 | a   | A1 b not with A1 a, in which P1 sat: into smoke at 08:00",
        "08:00:00,into smoke,SM2 | a b | ''",
      })
  void each_load_of_pieces_has_its_own_probe(String b, String seats, String found) {
    Bench bench =
        lot()
            .write("smoke,08:00:00,into smoke,SM,,,MA,,,,a", "smoke," + b + ",,,MA,,,,b")
            .write(WAY[1], WAY[2], WAY[3]);
    for (String seat : seats.split(" ", -1)) {
      String of = "\"lot\": \"A1\", \"piece\": \"" + seat + "\"";
      bench.log(
          "P" + (seat.equals("a") ? 1 : seats.length()),
          "internal temperature",
          "°F",
          "LG-0",
          of,
          GOOD);
    }
    assertEquals(found, found(bench).replaceFirst(" \\(.*", ""));
  }

  @Test
  void where_nobody_wrote_the_piece_it_may_have_been_any() {
    Bench bench =
        lot()
            .write(
                "smoke,08:00:00,into smoke,SM,,,MA,,,,a",
                "smoke,09:30:00,into smoke,SM,,,MA,,,,b",
                WAY[1],
                WAY[2],
                WAY[3])
            .core("P1", "LG-0", GOOD);
    assertEquals(
        "A1 a not with A1 b, in which P1 may have sat: into smoke at 08:00"
            + " (2026-02-24/smoke.csv:2); A1 b not with A1 a, in which P1 may have sat: into smoke"
            + " at 09:30 (2026-02-24/smoke.csv:3)",
        found(bench));
    assertEquals("not shown", bench.finding(COOLING).verdict().words());
  }

  /** A thermometer that is put into one piece says nothing of a piece that went in later. */
  @Test
  void readings_by_hand_are_of_the_load_of_their_piece() {
    String hand = "smoke,10:58:00,internal temperature,,150,°F,MA,HT-0,,,";
    String[] loads = {
      "smoke,08:00:00,into smoke,SM,,,MA,,,,a", "smoke,09:30:00,into smoke,SM,,,MA,,,,b"
    };
    assertEquals(
        "A1 b not with A1 a, in which hand sat: into smoke at 09:30 (2026-02-24/smoke.csv:3)",
        found(
            lot()
                .write(loads)
                .write(
                    WAY[1], hand + "a", "chill,12:00:00,internal temperature,,80,°F,MA,HT-0,,,a")));
  }

  @Test
  void a_cooling_that_rests_on_another_load_is_not_shown() {
    Bench together = shared(lot().write(WAY).writeOf("B2", WAY), "B2");
    assertEquals("met", together.finding(COOLING).verdict().words());
    String[] later = WAY.clone();
    later[0] = "smoke,09:30:00,into smoke,SM";
    Bench apart = shared(lot().write(later).writeOf("B2", WAY), "B2");
    assertEquals("not shown", apart.finding(COOLING).verdict().words());
  }

  /** The lot's own probe shows it, whatever another one says of it. */
  @Test
  void one_probe_that_was_with_it_will_do() {
    String[] later = WAY.clone();
    later[0] = "smoke,07:30:00,into smoke,SM";
    Bench bench = shared(lot().write(WAY).writeOf("B2", later), "B2");
    assertEquals("", found(bench.core("P2", "LG-0", GOOD)));
  }

  @Test
  void it_is_told_what_to_do() {
    Fault fault =
        shared(lot().write(WAY).writeOf("B2", WAY[1], WAY[2], WAY[3]), "B2").doubts().stream()
            .filter(each -> each.rule().equals("probe in another load"))
            .findFirst()
            .orElseThrow();
    assertEquals("2026-02-24/p1-log.csv:P1", fault.place().toString());
    assertEquals(
        "a probe in a piece that was in the same places at the same times, within 15 min. Each load"
            + " has its own probe. Name in logs.json only the lots that were with the probe, and"
            + " under \"piece\" the one that it sat in; else say what else shows the other one.",
        fault.expected().toString());
  }
}
