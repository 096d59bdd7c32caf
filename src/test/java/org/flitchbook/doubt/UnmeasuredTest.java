package org.flitchbook.doubt;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.flitchbook.check.Bench;
import org.flitchbook.input.Fault;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Where one thickness is written, all are: what was not measured may be the thicker one. */
final class UnmeasuredTest {

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
    return Bench.book().rule(COOLING).write(WAY);
  }

  private static Bench probed(Bench bench, String probe, String of) {
    return bench.log(probe, "internal temperature", "°F", "LG-0", of, GOOD);
  }

  private static String thickness(String piece, String mm) {
    return "cure,05:00,thickness,," + mm + ",mm,MA,,,," + piece;
  }

  private static String found(Bench bench) {
    return bench.doubts().stream()
        .filter(fault -> fault.rule().equals("piece without a thickness"))
        .map(fault -> fault.place() + ": " + fault.found())
        .reduce("", String::concat);
  }

  /** Three pieces were weighed; those named by the first column were measured. */
  @ParameterizedTest(name = "measured {0}, probe in {1}: {2}")
  @CsvSource(
      delimiter = '|',
      value = {
        "a b c | a     | ''",
        "''    | a     | ''",
        "a     | a     | 'A1 b, A1 c'",
        "a b   | a     | A1 c",
        "a     | a b   | A1 c",
        "a     | a b c | ''",
        "b     | a     | A1 c",
        "*     | a     | ''",
        "* a   | a     | ''",
      })
  void one_thickness_asks_for_all(String measured, String seats, String lacking) {
    Bench bench = lot();
    for (String piece : new String[] {"a", "b", "c"}) {
      bench.write("cure,05:00,green weight,,2400,g,MA,S-10,,," + piece);
      if (measured.contains(piece)) {
        bench.write(thickness(piece, "38"));
      }
    }
    if (measured.contains("*")) {
      bench.write(thickness("", "38"));
    }
    for (String seat : seats.split(" ", -1)) {
      probed(bench, "P" + seat, "\"lot\": \"A1\", \"piece\": \"" + seat + "\"");
    }
    String found = found(bench);
    assertEquals(
        lacking,
        found.replaceFirst(".*no thickness of ", "").replaceFirst(", beside one of 38 mm .*", ""));
  }

  @ParameterizedTest(name = "A1 {0}, B2 {1}, probe in {2}: {3}")
  @CsvSource(
      delimiter = '|',
      value = {
        "38 | 38 | B2 | ''",
        "'' | '' | B2 | ''",
        "'' | 38 | B2 | A1",
        "'' | 38 | '' | A1",
        "38 | '' | '' | B2",
        "38 | '' | A1 | ''",
      })
  void lots_of_one_probe_are_all_measured_or_none(
      String own, String other, String seat, String lacking) {
    Bench bench = lot().writeOf("B2", WAY);
    if (!own.isEmpty()) {
      bench.write(thickness("", own));
    }
    if (!other.isEmpty()) {
      bench.writeOf("B2", thickness("", other));
    }
    String piece = seat.isEmpty() ? "" : ", \"piece\": \"" + seat + "\"";
    String found = found(probed(bench, "P1", "\"lots\": [\"A1\", \"B2\"]" + piece));
    assertEquals(
        lacking,
        found.replaceFirst(".*no thickness of ", "").replaceFirst(", beside one of 38 mm .*", ""));
  }

  /** Nobody wrote in which piece it sat: it may be in either, and neither has its own. */
  @Test
  void a_probe_that_may_have_sat_in_any_piece_is_in_none_for_certain() {
    Bench bench = lot().write(thickness("a", "38"), "cure,05:01,green weight,,2400,g,MA,S-10,,,b");
    assertEquals(
        "2026-02-24/p1-log.csv:P1: no thickness of A1 b, beside one of 38 mm"
            + " (2026-02-24/cure.csv:3)",
        found(bench.core("P1", "LG-0", GOOD)));
    assertEquals("not shown", bench.finding(COOLING).verdict().words());
  }

  @Test
  void it_is_told_what_to_do() {
    Fault fault =
        probed(
                lot().write(thickness("a", "38"), "cure,05:01,rind,,off,,MA,,,,b"),
                "P1",
                "\"lot\": \"A1\", \"piece\": \"a\"")
            .doubts()
            .stream()
            .filter(each -> each.rule().equals("piece without a thickness"))
            .findFirst()
            .orElseThrow();
    assertEquals(
        "the thickness of every piece and lot of one probe, where one is written. Write how thick"
            + " the others are, or say what shows that they are no thicker.",
        fault.expected().toString());
  }

  @Test
  void without_a_reading_of_the_core_nothing_is_asked() {
    assertEquals(
        "",
        found(lot().write(thickness("a", "38"), "cure,05:01,green weight,,2400,g,MA,S-10,,,b")));
  }
}
