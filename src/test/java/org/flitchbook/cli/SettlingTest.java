package org.flitchbook.cli;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The next close settles what one that was cut off left behind, and says so. */
final class SettlingTest {

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

  private Ran close() {
    return Ran.of("close", day).expect(0);
  }

  private void copyClosed() {
    Tree.delete(book);
    Tree.closedExample(folder);
  }

  private void loseTheLine() throws Exception {
    Files.delete(Chain.file(book));
  }

  @Test
  void a_folder_that_never_became_a_revision_is_cleared_away() throws Exception {
    Path left = Files.createDirectories(records.resolve(".new-r1-123").resolve("revision"));
    Files.writeString(left.resolve("day.pdf"), "%PDF-1.7 cut off");
    String out = close().out();
    assertAll(
        () ->
            assertTrue(
                out.contains(
                    "\n"
                        + "An unfinished close or signature of 2026-02-24 was found and cleared"
                        + " away.\n"),
                out),
        () -> assertFalse(Files.exists(records.resolve(".new-r1-123"))),
        () -> assertEquals(List.of("closed r1"), Chain.events(book)));
  }

  @Test
  void a_finished_revision_without_its_line_gets_the_line() throws Exception {
    copyClosed();
    var lost = Chain.last(book);
    Map<String, String> before = Tree.hashes(records);
    loseTheLine();
    String out = close().out();
    var found = Chain.last(book);
    assertAll(
        () ->
            assertTrue(
                out.contains(
                    "\n"
                        + "records/2026-02-24/r1 was found complete, but without its line in the"
                        + " ledger; it has line 1 now.\n"
                        + "With entries, and never closed: 2026-02-16 to 2026-02-23.\n"
                        + "Nothing new: "),
                out),
        () -> assertEquals(before, Tree.hashes(records)),
        () -> assertEquals(List.of("closed r1"), Chain.events(book)),
        () -> assertEquals(lost.get("inputs"), found.get("inputs")),
        () -> assertEquals(lost.get("outputs"), found.get("outputs")),
        () -> assertEquals("2026-02-25T05:00:00Z", found.get("facts").get("judged at").asText()),
        () -> assertTrue(found.get("facts").get("found").asText().startsWith("complete")));
  }

  @Test
  void an_amendment_without_its_line_gets_it_with_its_reason() throws Exception {
    copyClosed();
    byte[] before = Tree.bytes(Chain.file(book));
    Tree.edit(day.resolve("chill.csv"), "4222", "4223");
    Ran.of("close", day, "--as", "MA", "--reason", "read it again").expect(0);
    Files.write(Chain.file(book), before);
    close();
    assertAll(
        () -> assertEquals(List.of("closed r1", "amended r2"), Chain.events(book)),
        () -> assertEquals("MA", Chain.last(book).get("by").asText()),
        () -> assertEquals("read it again", Chain.last(book).get("reason").asText()),
        () -> assertEquals(List.of(), Chain.faults(book)));
  }

  /** A book whose records are older than the ledger is taken into it, revision by revision. */
  @Test
  void revisions_from_before_the_ledger_are_taken_into_it_in_their_order() throws Exception {
    copyClosed();
    Tree.edit(day.resolve("chill.csv"), "4222", "4223");
    Ran.of("close", day, "--as", "MA", "--reason", "read it again").expect(0);
    loseTheLine();
    close();
    assertEquals(List.of("closed r1", "amended r2"), Chain.events(book));
  }

  @Test
  void a_revision_without_its_line_that_was_changed_is_put_aside() throws Exception {
    copyClosed();
    loseTheLine();
    Files.writeString(records.resolve("r1").resolve("day.pdf"), "changed");
    Map<String, String> before = Tree.hashes(records.resolve("r1"));
    String out = close().out();
    assertAll(
        () ->
            assertTrue(
                out.contains(
                    "r1 is not in the ledger and not what its own manifest says; it was put aside"
                        + " as aside-1.\n"),
                out),
        () -> assertEquals(before, Tree.hashes(records.resolve("aside-1"))),
        () -> assertEquals(7, Tree.names(records.resolve("r1")).size()),
        () -> assertEquals(List.of("closed r1"), Chain.events(book)));
  }

  @Test
  void other_days_are_settled_too() throws Exception {
    Path other = book.resolve("2026-02-23");
    Ran.of("close", other).expect(0);
    loseTheLine();
    close();
    assertEquals(
        List.of("2026-02-23", "2026-02-24"),
        Chain.lines(book).stream().map(line -> line.get("day").asText()).toList());
  }

  @Test
  void a_line_that_was_cut_off_is_kept_aside_before_the_next() throws Exception {
    copyClosed();
    Files.writeString(Chain.file(book), "{\"about\":\"", StandardOpenOption.APPEND);
    Tree.edit(day.resolve("chill.csv"), "4222", "4223");
    String out = Ran.of("close", day, "--as", "MA", "--reason", "read again").expect(0).out();
    assertAll(
        () ->
            assertTrue(
                out.contains(
                    "ledger.jsonl:2: found 10 bytes of a line that was never finished, expected a"
                        + " line feed at its end; it was kept aside as ledger.torn-1\n"),
                out),
        () -> assertEquals("{\"about\":\"", Tree.text(book.resolve("ledger.torn-1"))),
        () -> assertEquals(List.of(), Chain.faults(book)));
  }

  @Test
  void to_a_broken_chain_nothing_is_added() throws Exception {
    copyClosed();
    Tree.edit(Chain.file(book), "\"revision\":1", "\"revision\":7");
    Map<String, String> before = Tree.hashes(book);
    Ran ran = Ran.of("close", day).expect(3);
    assertAll(
        () -> assertTrue(ran.err().startsWith("ledger.jsonl:1:hash: found "), ran.err()),
        () -> assertTrue(ran.err().endsWith("Nothing was judged and nothing was written.\n")),
        () -> assertEquals(before, Tree.hashes(book)));
  }
}
