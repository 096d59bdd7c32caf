package org.flitchbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The head of the ledger on paper, and what it shows of a book that was touched since. */
final class WitnessTest {

  private static final Pattern PRINTED =
      Pattern.compile("line (\\d+)\\s.*?((?:[0-9a-f]{4} ?){5})", Pattern.DOTALL);
  private static final String CONTINUES = "The ledger continues from the head that you have: line ";

  @TempDir private Path folder;
  private Smokeyard yard;
  private Path backup;

  /**
   * Closed once, kept as a backup, and closed again: the second print has the head of the first.
   */
  @BeforeEach
  void closeAgain() {
    yard = Smokeyard.closed(folder.resolve("yard"));
    backup = Tree.copy(yard.book, folder.resolve("backup"));
    amend(yard.book, "4222", "4223");
  }

  private static String amend(Path book, String old, String now) {
    Path day = book.resolve(Tree.DAY);
    Tree.edit(day.resolve("chill.csv"), old, now);
    return Ran.of("close", day, "--as", "MA", "--reason", "read again").expect(0).out();
  }

  private static Path print(Path book, int revision, String name) {
    return book.resolve("records/" + Tree.DAY + "/r" + revision + "/" + name + ".pdf");
  }

  /** As it is typed from the first page. */
  private static String typed(Path pdf) {
    Matcher printed = PRINTED.matcher(Pdfs.text(pdf));
    assertTrue(printed.find(), () -> Pdfs.text(pdf));
    return printed.group(1) + " " + printed.group(2).strip();
  }

  private static Path picture(Path pdf, int dots, Path to) {
    try (PDDocument file = Loader.loadPDF(pdf.toFile())) {
      BufferedImage page = new PDFRenderer(file).renderImageWithDPI(0, dots, ImageType.RGB);
      String name = to.toString();
      assertTrue(ImageIO.write(page, name.substring(name.lastIndexOf('.') + 1), to.toFile()));
      return to;
    } catch (IOException unprinted) {
      throw new UncheckedIOException(unprinted);
    }
  }

  private static Ran prove(Path book, int status, Object... heads) {
    Object[] words = new Object[2 + 2 * heads.length];
    words[0] = "prove";
    words[1] = book;
    for (int i = 0; i < heads.length; i++) {
      words[2 + 2 * i] = "--head";
      words[3 + 2 * i] = heads[i];
    }
    return Ran.of(words).expect(status);
  }

  private static void says(Ran ran, String sentence) {
    assertTrue(ran.flat().contains(sentence), () -> sentence + " is not in\n" + ran.out());
  }

  @ParameterizedTest
  @CsvSource({
    "26047-B1, 150, png",
    "26047-B1, 150, jpg",
    "day, 200, png",
    "deviations, 300, jpg",
    "day, 600, png"
  })
  void a_picture_of_a_real_page_is_read_back(String name, int dots, String format) {
    Path page = picture(print(yard.book, 2, name), dots, folder.resolve("page." + format));
    says(prove(yard.book, 0, page), CONTINUES + "1 has that hash, and 1 line follows.");
  }

  @Test
  void what_stands_beside_the_code_is_typed() {
    String typed = typed(print(yard.book, 2, "day"));
    for (String each : List.of(typed, typed.toUpperCase(Locale.ROOT), typed.substring(0, 21))) {
      says(prove(yard.book, 0, each), CONTINUES + "1 has that hash");
    }
  }

  @Test
  void what_close_and_sign_say_is_taken_as_it_stands() {
    String closed = Ran.of("close", yard.book.resolve(Tree.DAY)).out();
    String signed = yard.ran("sign", print(yard.book, 2, "day"), "--as", "MA").expect(0).out();
    String line = signed.lines().filter(each -> each.contains("hash")).findFirst().orElseThrow();
    says(prove(yard.book, 0, line), CONTINUES + "3 has that hash, and 0 lines follow.");
    assertTrue(closed.contains("Nothing new"), closed);
  }

  @Test
  void a_folder_put_back_to_an_older_state_lacks_the_lines_since() {
    amend(yard.book, "4223", "4224");
    String sheet = typed(print(yard.book, 3, "day"));
    assertEquals("2", sheet.split(" ", 2)[0]);
    says(prove(backup, 0), "No sign of a change.");
    says(prove(backup, 1, sheet), "the ledger ends at line 1, and you have the head of line 2.");
    says(
        prove(backup, 1, "9 " + "0".repeat(16)),
        "The folder lacks 8 lines at least, 2 to 9, and the records that they list.");
  }

  @Test
  void a_ledger_written_again_from_an_older_state_has_another_hash_there() {
    amend(yard.book, "4223", "4224");
    String sheet = typed(print(yard.book, 3, "day"));
    amend(backup, "4222", "4225");
    amend(backup, "4225", "4226");
    says(prove(backup, 0), "No sign of a change.");
    Ran ran = prove(backup, 1, typed(print(yard.book, 2, "day")), sheet);
    says(ran, CONTINUES + "1 has that hash, and 2 lines follow.");
    says(ran, "Lines were written again: line 2 has another hash than the one that you have");
  }

  @Test
  void of_a_broken_chain_nothing_can_be_said() {
    Path ledger = yard.book.resolve("ledger.jsonl");
    String sheet = typed(print(yard.book, 2, "day"));
    Tree.edit(ledger, "read again", "read anew");
    says(prove(yard.book, 1, sheet), "can't be said: it is broken.");
  }

  @Test
  void json_has_the_same() {
    Ran ran = Ran.of("prove", yard.book, "--json", "--head", "2 " + "0".repeat(20)).expect(1);
    assertTrue(ran.out().contains("proving.head.rewritten"), ran.out());
    assertEquals(false, ran.json().get("untouched").asBoolean());
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "2", "2 3f2a", "no/such.png", "\0", "3f2a9c1b77aa0c1d55e2"})
  void what_is_no_head_is_wrong_use(String head) {
    assertTrue(prove(yard.book, 2, head).err().contains("is neither the number of a line"));
  }

  @Test
  void a_picture_without_the_code_is_wrong_use() throws IOException {
    Path page = picture(print(yard.book, 1, "day"), 70, folder.resolve("first.png"));
    assertTrue(prove(yard.book, 2, page).err().contains("found no code that can be read"));
    Path text = Files.writeString(folder.resolve("text.png"), "no picture");
    assertTrue(prove(yard.book, 2, text).err().contains("neither a PNG nor a JPEG picture"));
  }

  @Test
  void a_record_has_no_ledger_to_continue() {
    Ran ran = Ran.of("prove", yard.record, "--head", "1 " + "0".repeat(16)).expect(2);
    assertTrue(ran.err().contains("--head is for a book"), ran.err());
  }
}
