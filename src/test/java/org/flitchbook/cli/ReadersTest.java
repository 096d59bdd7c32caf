package org.flitchbook.cli;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static org.flitchbook.OutsideProgram.ask;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureNode;
import org.flitchbook.Golden;
import org.flitchbook.input.SourceFile;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.FieldSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What a validator can't see: the order in which a print is read, what it carries, its words. */
final class ReadersTest {

  static final List<String> PRINTS = DemoDay.PRINTS;

  private static final String LOT = "26047-B1";

  /** Words that a typesetter's ligatures would hide from a search, and signs that no font has. */
  private static final String NOTE =
      "office affidavit confirm flitch fillet baffle; \u0645\u0644\u062d \u5869 cafe\u0301"
          + " \u202egnorw\u202c \ud83d\udd25";

  /** File, use, bytes, rows, rows used, and the hash in two halves. */
  private static final Pattern CARRIED =
      Pattern.compile(
          "(\\S+) [a-z ]+ (\\d+) (?:\\d+|–) (?:\\d+|–) ([0-9a-f]{32}) ?\\n([0-9a-f]{32})");

  @TempDir private static Path folder;
  private static Path records;
  private static String notes;

  @BeforeAll
  static void close() {
    records = DemoDay.records();
    Path book = Tree.example(folder);
    Tree.edit(book.resolve("2026-02-16/cure.csv"), "Drovers End Abattoir", NOTE);
    Ran.of("close", book.resolve(Tree.DAY)).expect(0);
    Path noted = book.resolve(Smokeyard.RECORD);
    notes =
        ask("pdftotext", "-enc", "UTF-8", "-l", "3", "-raw", noted, "-").replaceAll("\\s+", " ");
  }

  private static Path pdf(String name) {
    return records.resolve(name + ".pdf");
  }

  /** The tree of headings, tables with the scopes of their heads, lists, and figures in words. */
  @ParameterizedTest
  @ValueSource(strings = {LOT, "deviations", "day"})
  void a_print_is_read_out_in_order(String name) throws IOException {
    String tree = ask("pdfinfo", "-struct-text", withoutColourProfile(name));
    String steady = tree.replaceAll("Object \\d+ 0", "Object").replaceAll(" +/BBox .*\n", "");
    // Of the files carried every row is alike.
    String shown = steady.substring(0, steady.indexOf("\"Files carried\""));
    Golden.check("cli/demo/" + name + ".struct", shown + "\n" + figures(pdf(name)));
  }

  /**
   * The outside program reads that profile again for each element, which takes most of its time.
   */
  private static Path withoutColourProfile(String name) {
    String print = new String(Tree.bytes(pdf(name)), ISO_8859_1);
    assertTrue(print.contains("/OutputIntents "), name);
    Path copy = folder.resolve(name + "-without-profile.pdf");
    byte[] bytes = print.replace("/OutputIntents ", "/NoIntentsHere ").getBytes(ISO_8859_1);
    Tree.write(copy, () -> Files.write(copy, bytes));
    return copy;
  }

  /** The words that stand for each figure, which the outside program doesn't tell. */
  private static String figures(Path pdf) throws IOException {
    try (PDDocument file = Loader.loadPDF(pdf.toFile())) {
      return figures(file.getDocumentCatalog().getStructureTreeRoot());
    }
  }

  private static String figures(PDStructureNode node) {
    StringBuilder told = new StringBuilder();
    for (Object kid : node.getKids()) {
      if (kid instanceof PDStructureElement element) {
        String alternative = element.getAlternateDescription();
        told.append(alternative == null ? "" : alternative + "\n").append(figures(element));
      }
    }
    return told.toString();
  }

  @ParameterizedTest
  @FieldSource("PRINTS")
  void the_files_that_it_carries_are_those_that_it_lists(String name) throws IOException {
    Path saved = Files.createDirectories(folder.resolve("saved-" + name));
    ask("pdfdetach", "-saveall", "-o", saved, pdf(name));
    Map<String, String> found = new TreeMap<>();
    for (Path file : Tree.walk(saved)) {
      byte[] bytes = Tree.bytes(file);
      found.put(Tree.name(saved, file), bytes.length + " " + SourceFile.of("", bytes).sha256());
    }
    assertEquals(listed(Pdfs.text(pdf(name))), found);
    String list = ask("pdfdetach", "-list", pdf(name));
    assertTrue(list.startsWith(found.size() + " embedded files"), list);
  }

  private static Map<String, String> listed(String text) {
    Map<String, String> listed = new TreeMap<>();
    for (MatchResult row : CARRIED.matcher(text).results().toList()) {
      String name = row.group(1).replace('/', '_');
      listed.put(name, row.group(2) + " " + row.group(3) + row.group(4));
    }
    return listed;
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"office", "affidavit", "confirm", "flitch", "fillet", "baffle", "caf\u00e9"})
  void a_word_of_a_note_is_found_whole(String word) {
    assertTrue(notes.contains(word), notes);
  }

  @Test
  void what_no_font_shows_is_named_and_nothing_is_reordered() {
    String expected =
        "[3 letters of the script Arabic] [1 letter of the script Han] café gnorw [U+1F525]";
    assertTrue(notes.contains(expected), notes);
  }
}
