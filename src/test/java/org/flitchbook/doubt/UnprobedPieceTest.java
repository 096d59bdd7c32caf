package org.flitchbook.doubt;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.flitchbook.check.Bench;
import org.flitchbook.input.Fault;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * A batch whose probe sat in the thin piece: its log looks good, and shows nothing of the other.
 */
final class UnprobedPieceTest {

  private static final String COOLING = "us.b99.cooling-1";
  private static final String GOOD =
      "08:00:00..10:59:00/60 45>150; 11:00:00..12:00:00/60 130>80; 12:01:00..15:00:00/60 79>35";

  /** Pieces as {@code a 38, b 52}, in mm; a piece may have no name. */
  private static Bench pieces(String pieces) {
    Bench bench =
        Bench.book()
            .rule(COOLING)
            .write(
                "smoke,08:00:00,into smoke,SM",
                "smoke,11:00:00,out of smoke",
                "chill,11:05:00,into chill,F2",
                "chill,18:00:00,out of chill");
    for (String piece : pieces.isEmpty() ? new String[0] : pieces.split(", ", -1)) {
      String[] words = piece.split(" ", -1);
      String name = words.length == 1 ? "" : words[0];
      bench.write("cure,05:00,thickness,," + words[words.length - 1] + ",mm,MA,,,," + name);
    }
    return bench;
  }

  private static Bench probed(String pieces, String... seats) {
    Bench bench = pieces(pieces);
    for (int i = 0; i < seats.length; i++) {
      String seat = seats[i].isEmpty() ? "" : ", \"piece\": \"" + seats[i] + "\"";
      String of = "\"lot\": \"A1\"" + seat;
      bench.log("P" + (i + 1), "internal temperature", "°F", "LG-0", of, GOOD);
    }
    return bench;
  }

  private static String found(Bench bench) {
    return bench.doubts().stream()
        .filter(fault -> fault.rule().equals("thicker piece without a probe"))
        .map(fault -> fault.found().toString())
        .reduce("", String::concat);
  }

  private static final String UNKNOWN =
      "nobody wrote in which piece P1 sat, or how thick that one was, and one is 52 mm thick";

  @ParameterizedTest(name = "{0}, probe in {1}: {2}")
  @CsvSource(
      delimiter = '|',
      value = {
        "a 38, b 52 | b  | ''",
        "a 38, b 52 | a  | a piece of 52 mm without a probe; P1 sat in one of 38 mm",
        "a 38, b 38 | a  | ''",
        "a 38, b 38.1 | a | a piece of 38.1 mm without a probe; P1 sat in one of 38 mm",
        "a 38, b 52 | '' | " + UNKNOWN,
        "a 38, b 52 | c  | " + UNKNOWN,
        "a 38, b 38 | '' | ''",
        "38         | '' | ''",
        "''         | '' | ''",
        "38, 52     | '' | " + UNKNOWN,
      })
  void the_probe_belongs_in_the_thickest_piece(String pieces, String seat, String found) {
    assertEquals(found, found(probed(pieces, seat)));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "a  | b  | ''",
        "b  | a  | ''",
        "a  | a  | a piece of 52 mm without a probe; P1 sat in one of 38 mm",
        "'' | b  | ''",
        "'' | a  | " + UNKNOWN,
      })
  void one_of_two_probes_in_it_will_do(String first, String second, String found) {
    assertEquals(found, found(probed("a 38, b 52", first, second)));
  }

  /** Where no log was kept: a thermometer that was always put into the same piece. */
  @ParameterizedTest
  @CsvSource({"b, b, false", "a, a, true", "a, b, true", "'', '', true"})
  void readings_by_hand_name_their_piece(String first, String second, boolean asked) {
    Bench bench =
        pieces("a 38, b 52")
            .write(
                "smoke,10:58,internal temperature,,150,°F,MA,HT-0,,," + first,
                "chill,15:00,internal temperature,,38,°F,MA,HT-0,,," + second);
    assertEquals(asked, !found(bench).isEmpty(), found(bench));
  }

  @Test
  void a_cooling_that_rests_on_the_thin_piece_is_not_shown() {
    assertEquals("met", probed("a 38, b 52", "b").finding(COOLING).verdict().words());
    assertEquals("not shown", probed("a 38, b 52", "a").finding(COOLING).verdict().words());
    assertEquals("not shown", probed("a 38, b 52", "").finding(COOLING).verdict().words());
  }

  @Test
  void it_is_told_what_to_do() {
    Fault fault =
        probed("a 38, b 52", "a").doubts().stream()
            .filter(each -> each.rule().equals("thicker piece without a probe"))
            .findFirst()
            .orElseThrow();
    assertEquals("2026-02-24/p1-log.csv:P1", fault.place().toString());
    assertEquals(
        "a probe in the thickest piece. The probe belongs in the thickest piece. Name the piece"
            + " that it sat in: \"piece\" in logs.json, or the column piece of a reading by hand;"
            + " else say what else shows the thicker one.",
        fault.expected().toString());
  }

  @Test
  void without_a_reading_of_the_core_nothing_is_asked() {
    assertEquals("", found(pieces("a 38, b 52")));
  }
}
