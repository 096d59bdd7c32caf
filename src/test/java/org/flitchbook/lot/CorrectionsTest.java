package org.flitchbook.lot;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.stream.Stream;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.What;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

final class CorrectionsTest {

  private static final String CURE = "2026-02-16/cure.csv";
  private static final String PRODUCT = "A1,2026-02-16 09:00,product,,JTB,,MA,,,,\n";

  private static String green(String grams, String corrects) {
    return "A1,2026-02-16 09:12,green weight,," + grams + ",g,MA,S-10,," + corrects + ",\n";
  }

  private static List<String> inForce(Lots book) {
    return book.lot("A1").orElseThrow().all(What.GREEN_WEIGHT).stream().map(Entry::shown).toList();
  }

  private static List<String> replaced(Lots book) {
    return book.lot("A1").orElseThrow().corrections().stream()
        .map(each -> each.replaced().shown() + " by " + each.by().shown())
        .toList();
  }

  @Test
  void an_entry_is_corrected_by_one_that_names_it_in_its_own_folder() {
    Lots book = Books.of(CURE, PRODUCT + green("4812", "") + green("4821", "cure.csv:3"));
    assertEquals(List.of(), Books.said(book));
    assertEquals(List.of("4821 g"), inForce(book));
    assertEquals(List.of("4812 g by 4821 g"), replaced(book));
  }

  @Test
  void an_entry_is_corrected_from_another_day_by_its_full_name() {
    Lots book =
        Books.of(
            CURE, PRODUCT + green("4812", ""), "2026-02-17/cure.csv", green("4821", CURE + ":3"));
    assertEquals(List.of(), Books.said(book));
    assertEquals(List.of("4821 g"), inForce(book));
  }

  @Test
  void a_correction_is_corrected_in_turn() {
    Lots book =
        Books.of(
            CURE, PRODUCT + green("1", "") + green("2", "cure.csv:3") + green("3", "cure.csv:4"));
    assertEquals(List.of(), Books.said(book));
    assertEquals(List.of("3 g"), inForce(book));
    assertEquals(List.of("1 g by 2 g", "2 g by 3 g"), replaced(book));
  }

  private static final String EXPECTED =
      ", expected file:line of an entry of the same lot and sheet about green weight";

  static Stream<Arguments> wrong() {
    String other = "B2,2026-02-16 09:00,product,,JTB,,MA,,,,\n";
    return Stream.of(
        Arguments.of("a line without an entry", "cure.csv:1", ""),
        Arguments.of("a file that is not there", "soak.csv:3", ""),
        Arguments.of("a folder that is not there", "2026-02-15/cure.csv:3", ""),
        Arguments.of("an entry about something else", "cure.csv:2", ""),
        Arguments.of("an entry of another lot", "cure.csv:4", other));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("wrong")
  void a_correction_of_what_is_not_there_stops_its_lot(String called, String names, String other) {
    String rows = PRODUCT + green("4812", "") + other;
    int line = other.isEmpty() ? 4 : 5;
    Lots book = Books.of(CURE, rows + green("4821", names));
    assertEquals(
        "stop A1 " + CURE + ":" + line + ":corrects: found " + names + EXPECTED,
        Books.said(book).get(0));
    assertEquals(List.of("4812 g", "4821 g"), inForce(book));
  }

  @Test
  void a_second_green_weight_without_a_correction_is_a_stop() {
    Lots book = Books.of(CURE, PRODUCT + green("4812", "") + green("4821", ""));
    assertEquals(
        List.of(
            "stop A1 "
                + CURE
                + ":4:what: found a second green weight beside "
                + CURE
                + ":3, expected \"corrects\" naming the one that it replaces, or a piece"),
        Books.said(book));
  }

  @Test
  void each_piece_has_its_own_green_weight() {
    String first = green("4812", "").replace(",\n", ",P1\n");
    String second = green("4400", "").replace(",\n", ",P2\n");
    assertEquals(List.of(), Books.said(Books.of(CURE, PRODUCT + first + second)));
  }

  @Test
  void two_corrections_of_the_same_entry_are_a_stop() {
    Lots book =
        Books.of(
            CURE, PRODUCT + green("1", "") + green("2", "cure.csv:3") + green("3", "cure.csv:3"));
    assertEquals(
        "stop A1 "
            + CURE
            + ":5:corrects: found cure.csv:3, which "
            + CURE
            + ":4 corrects already, expected file:line of the entry in force",
        Books.said(book).get(0));
    assertEquals(List.of("2 g", "3 g"), inForce(book));
  }

  @Test
  void an_entry_that_corrects_itself_stays_and_is_a_stop() {
    Lots book = Books.of(CURE, PRODUCT + green("1", "cure.csv:3"));
    assertEquals(
        List.of(
            "stop A1 "
                + CURE
                + ":3:corrects: found cure.csv:3, which leads back to this entry, expected an"
                + " earlier entry"),
        Books.said(book));
    assertEquals(List.of("1 g"), inForce(book));
  }

  @Test
  void entries_that_correct_each_other_both_stay_and_are_stops() {
    Lots book = Books.of(CURE, PRODUCT + green("1", "cure.csv:4") + green("2", "cure.csv:3"));
    assertEquals(List.of("1 g", "2 g"), inForce(book));
    assertEquals(3, Books.said(book).size(), "two circles and a second green weight");
  }

  @Test
  void a_weight_of_another_sheet_is_not_corrected() {
    String weight = "A1,2026-02-16 09:30,weight,,4640,g,MA,S-10,,%s,\n";
    Lots book =
        Books.of(
            CURE,
            PRODUCT + weight.replace("%s", ""),
            "2026-02-16/soak.csv",
            weight.replace("%s", "cure.csv:3"));
    assertEquals(
        List.of(
            "stop A1 2026-02-16/soak.csv:2:corrects: found cure.csv:3, expected file:line of an"
                + " entry of the same lot and sheet about weight"),
        Books.said(book));
  }

  @Test
  void what_was_wrong_with_a_corrected_entry_is_noted_and_no_longer_stops() {
    String wrong = green("4812", "").replace("MA", "XX").replace("S-10", "");
    Lots book = Books.of(CURE, PRODUCT + wrong + green("4812", "cure.csv:3"));
    assertEquals(
        List.of(
            "note A1 "
                + CURE
                + ":3:instrument: found no instrument, expected which one read it; replaced by "
                + CURE
                + ":4"),
        Books.said(book));
  }

  @Test
  void a_row_that_could_not_be_used_is_replaced_by_a_correction() {
    String spoons = "A1,2026-02-16 09:12,green weight,,about 5,kg,MA,S-10,,,\n";
    Lots book = Books.of(CURE, PRODUCT + spoons + green("4812", "cure.csv:3"));
    assertEquals(
        List.of(
            "note A1 "
                + CURE
                + ":3:value: found about 5, expected a mass, digits with a decimal point; replaced"
                + " by "
                + CURE
                + ":4"),
        Books.said(book));
    assertEquals(List.of("4812 g"), inForce(book));
  }

  @Test
  void a_time_typed_a_year_late_is_corrected() {
    String late = green("4812", "").replace("2026-02-16", "2027-02-16");
    Lots book = Books.of(CURE, PRODUCT + late + green("4812", "cure.csv:3"));
    assertEquals(List.of(), Books.said(book));
    assertEquals(List.of("4812 g"), inForce(book));
  }
}
