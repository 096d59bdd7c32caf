package org.flitchbook.cli;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Work in a book of one's own: closing into it, judging it whole, judging an earlier moment. */
final class BookTest {

  @TempDir private Path folder;
  private Path book;
  private Path day;
  private Path records;

  @BeforeEach
  void copy() {
    book = Tree.example(folder);
    day = book.resolve(Tree.DAY);
    records = book.resolve("records").resolve(Tree.DAY);
  }

  @Test
  void close_writes_the_records_and_the_ledger_of_the_book_and_nothing_else() {
    Map<String, String> before = Tree.hashes(book);
    Ran.of("close", day).expect(0);
    assertEquals(7, Tree.names(records.resolve("r1")).size());
    Path records = book.resolve("records");
    assertEquals(
        before,
        Tree.hashes(
            book,
            file ->
                !file.startsWith(records) && !file.getFileName().toString().startsWith("ledger.")));
  }

  @Test
  void a_changed_input_gives_a_second_revision_and_keeps_the_first() throws Exception {
    Tree.delete(book);
    Tree.closedExample(folder);
    Map<String, String> first = Tree.hashes(records.resolve("r1"));
    Tree.edit(day.resolve("chill.csv"), "4222", "4223");
    Ran second = Ran.of("close", day, "--as", "MA", "--reason", "read it again").expect(0);
    Ran third = Ran.of("close", day).expect(0);
    try (var revisions = Files.list(records)) {
      assertEquals(2, revisions.count());
    }
    assertAll(
        () -> assertEquals(first, Tree.hashes(records.resolve("r1"))),
        () -> assertTrue(second.out().contains("/r2/26047-B1.pdf\n"), second.out()),
        () -> assertTrue(third.out().contains("Nothing new: " + records.resolve("r2"))));
  }

  @Test
  void records_of_a_close_change_nothing_about_the_next_check() {
    String before = Ran.of("check", day, "--json").expect(0).out();
    Tree.delete(book);
    Tree.closedExample(folder);
    assertEquals(before, Ran.of("check", day, "--json").expect(0).out());
  }

  @Test
  void a_book_is_judged_at_its_last_day() {
    ObjectNode ofBook = (ObjectNode) Ran.of("check", book, "--json").expect(0).json();
    assertEquals(8, ofBook.remove("days").get("neverClosed").size());
    assertEquals(Ran.of("check", day, "--json").expect(0).json(), ofBook);
  }

  @Test
  void a_folder_is_the_same_by_another_spelling_of_its_path() {
    Path roundabout = book.resolve("2026-02-23").resolve("..").resolve(Tree.DAY);
    assertEquals(
        Ran.of("check", day).expect(0).out(), Ran.of("check", roundabout + "/").expect(0).out());
  }

  @Test
  void a_moment_within_the_chill_is_pending_and_all_well() {
    var json = Ran.of("check", day, "--json", "--at", "2026-02-24T12:00").expect(0).json();
    assertEquals("2026-02-24T12:00-05:00", json.get("judgedAt").asText());
    assertEquals("pending", json.get("lots").get(0).get("verdict").asText());
  }

  @Test
  void a_moment_may_be_written_in_another_zone() {
    assertEquals(
        Ran.of("check", day, "--json", "--at", "2026-02-24T12:00").expect(0).out(),
        Ran.of("check", day, "--json", "--at", "2026-02-24T17:00Z").expect(0).out());
  }

  @Test
  void a_day_closed_early_is_closed_again_once_it_is_over() {
    Ran.of("close", day, "--at", "2026-02-24 12:00").expect(0);
    Ran over = Ran.of("close", day).expect(0);
    assertTrue(over.out().contains("/r2/26047-B1.pdf\n"), over.out());
  }

  @Test
  void a_book_of_ones_own_limits_says_so_in_the_record() throws Exception {
    Path limits = Files.createDirectories(book.resolve("templates").resolve("limits"));
    Files.copy(Path.of("templates", "limits", "us.json"), limits.resolve("us.json"));
    Path out = folder.resolve("out");
    Ran.of("close", day, "--out", out).expect(0);
    String record = Pdfs.text(out.resolve(Tree.DAY).resolve("r1").resolve("26047-B1.pdf"));
    assertTrue(
        record.contains("The book's own files stood in for the tool's: templates/limits/us.json."),
        record);
  }

  /** Salted in two pieces of 2406 g, weighed together once they hang: 4222 / 4812 = 87.7 %. */
  @Test
  void a_lot_weighed_whole_is_held_against_the_sum_of_its_pieces() throws Exception {
    Path cure = book.resolve("2026-02-16").resolve("cure.csv");
    String green = "26047-B1,2026-02-16 09:12,green weight,,4812,g,MA,S-10,";
    String piece = "26047-B1,2026-02-16 09:12,green weight,,2406,g,MA,S-10,,";
    Tree.edit(cure, "instrument,note", "instrument,note,piece");
    Tree.edit(cure, green, piece + "a\n" + piece + "b");
    Ran.of("close", day, "--out", folder.resolve("out"));
    Path record = folder.resolve("out").resolve(Tree.DAY).resolve("r1").resolve("26047-B1.pdf");
    assertTrue(Pdfs.text(record).contains("green weight, piece b 2406 g – 100.0 %"));
    assertTrue(Pdfs.text(record).matches("(?s).*chill 4222 g [0-9.]+ % 87.7 % .*"));
  }
}
