package org.flitchbook.cli;

import static org.flitchbook.OutsideProgram.ask;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.flitchbook.OwnFolders;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.FieldSource;

/** What programs that nobody here wrote make of the printed records of the demo day. */
final class PrintTest {

  private static final List<String> PRINTS = DemoDay.PRINTS;

  static final List<String> LOTS = PRINTS.stream().filter(name -> name.startsWith("26")).toList();

  private static final Map<String, String> VERDICTS =
      Map.of(
          "26043-L1", "NOT MET",
          "26044-B1", "NOT MET",
          "26045-B1", "NOT MET",
          "26045-B2", "NOT MET",
          "26047-B1", "MET",
          "26048-J1", "MET",
          "26055-B1", "PENDING",
          "day", "7 LOTS",
          "deviations", "6 DEVIATIONS");

  private static Path letter;
  private static Path a4;

  @BeforeAll
  static void close() {
    letter = DemoDay.records();
    a4 = DemoDay.onA4();
  }

  private static Path pdf(String name) {
    return letter.resolve(name + ".pdf");
  }

  @ParameterizedTest
  @FieldSource("PRINTS")
  void the_verdict_and_words_with_double_f_are_found_whole(String name) {
    String text = ask("pdftotext", "-enc", "UTF-8", pdf(name), "-");
    assertTrue(text.lines().anyMatch(line -> line.equals(VERDICTS.get(name))), text);
    assertTrue(text.contains("toxic in excess"), text);
    assertFalse(text.matches("(?s).*[\ufb00-\ufb06\ufffd\u0000].*"), "a ligature or a lost sign");
  }

  @ParameterizedTest
  @FieldSource("LOTS")
  void the_boxes_to_sign_stand_on_page_one(String lot) {
    for (Path records : List.of(letter, a4)) {
      Path pdf = records.resolve(lot + ".pdf");
      String first = ask("pdftotext", "-enc", "UTF-8", "-l", "1", pdf, "-");
      String review = DemoDay.MET.contains(lot) ? "Pre-shipment review" : "Reviewed, not released";
      assertTrue(first.contains(review) && first.contains("Printed name"), first);
    }
  }

  @Test
  void names_of_things_can_be_searched_for() {
    String text = ask("pdftotext", "-enc", "UTF-8", pdf("26048-J1"), "-").replace('\u00a0', ' ');
    for (String word : List.of("Fühler 1", "birch-syrup", "°F", "26048-J1", "confirm")) {
      assertTrue(text.contains(word), word);
    }
  }

  @ParameterizedTest
  @FieldSource("PRINTS")
  void every_font_is_embedded_with_the_meaning_of_its_signs(String name) {
    List<String> fonts = ask("pdffonts", pdf(name)).lines().skip(2).toList();
    assertFalse(fonts.isEmpty());
    for (String font : fonts) {
      assertTrue(font.matches(".*\\byes\\s+yes\\s+yes\\s+\\d+\\s+0\\s*"), font);
    }
  }

  @ParameterizedTest
  @FieldSource("PRINTS")
  void the_file_is_sound(String name) {
    String said = ask("qpdf", "--check", pdf(name));
    assertTrue(said.contains("No syntax or stream encoding errors found"), said);
    assertFalse(said.contains("WARNING"), said);
  }

  @ParameterizedTest
  @FieldSource("PRINTS")
  void the_pages_have_the_size_that_the_plan_states(String name) {
    assertTrue(size(letter, name).startsWith("612 x 792 pts"), size(letter, name));
    assertTrue(size(a4, name).matches("595\\.\\d+ x 841\\.\\d+ pts.*"), size(a4, name));
  }

  private static String size(Path records, String name) {
    return ask("pdfinfo", records.resolve(name + ".pdf"))
        .lines()
        .filter(line -> line.startsWith("Page size:"))
        .map(line -> line.substring("Page size:".length()).strip())
        .findFirst()
        .orElseThrow();
  }

  /** A search for fonts of the machine would leave one, and would make prints depend on it. */
  @Test
  void no_cache_of_the_machines_fonts_is_made() {
    Path home = Path.of(System.getProperty("user.home"));
    assertEquals(OwnFolders.home(), home, "not the home of the user who runs the tests");
    for (Path place : List.of(home, Path.of(System.getProperty("java.io.tmpdir")), Path.of(""))) {
      assertFalse(Files.exists(place.resolve(".pdfbox.cache")), place.toString());
    }
  }
}
