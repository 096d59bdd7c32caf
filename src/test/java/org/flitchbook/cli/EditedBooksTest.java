package org.flitchbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.SeededRun;
import org.flitchbook.cli.BookDeed.Kind;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/**
 * No file of a book that was closed can be changed unnoticed, though all that nobody signed is made
 * to agree: of a book that nobody signed the records, of a signed one the rest.
 */
final class EditedBooksTest {

  private static final long SEED = 1417;

  @TempDir private static Path shared;
  private static Path closed;
  private static Path signed;
  private static final Map<Path, byte[]> WHOLE = new TreeMap<>();

  @TempDir private Path folder;

  @BeforeAll
  static void close() {
    closed = Smokeyard.closed(shared.resolve("closed")).book;
    signed = Smokeyard.signed(shared.resolve("signed")).book;
    Tree.walk(shared).forEach(file -> WHOLE.put(file, Tree.bytes(file)));
  }

  private static Path book(BookEdit edit) {
    return edit.isOf(Kind.RECORD_JSON) || edit.isOf(Kind.BUNDLE) ? closed : signed;
  }

  /** Cheaper than a copy of the book for each edit. */
  private static void restore() {
    Tree.walk(shared).stream()
        .filter(file -> !WHOLE.containsKey(file))
        .forEach(file -> Tree.write(file, () -> Files.delete(file)));
    WHOLE.forEach((file, bytes) -> Tree.write(file, () -> Files.write(file, bytes)));
  }

  @TestFactory
  Stream<DynamicTest> every_edit_is_noticed() {
    return Stream.of(Kind.values()).flatMap(this::edits);
  }

  /** Each edit of a kind, one after the other. */
  private Stream<DynamicTest> edits(Kind kind) {
    List<BookEdit> edits = BookEdit.noticed(kind);
    long first = SEED + 1000L * List.of(Kind.values()).indexOf(kind);
    int tried = SeededRun.cases("Edited books, " + kind, first, 500, 25);
    return IntStream.range(0, tried)
        .mapToObj(
            i -> {
              BookEdit edit = edits.get(i % edits.size());
              long seed = first + i;
              return DynamicTest.dynamicTest(
                  kind + ": " + edit + " " + seed, () -> edit(edit, seed, true));
            });
  }

  @TestFactory
  Stream<DynamicTest> what_nothing_in_the_folder_can_show() {
    return BookEdit.unnoticed().stream()
        .map(
            edit ->
                DynamicTest.dynamicTest(
                    "can't be noticed: " + edit.whyUnnoticed(), () -> edit(edit, SEED, false)));
  }

  private void edit(BookEdit edit, long seed, boolean isNoticed) throws Exception {
    Path book = book(edit);
    try {
      Map<String, String> before = Tree.hashes(book);
      edit.to(book, new SplittableRandom(seed));
      assertNotEquals(before, Tree.hashes(book), "nothing was edited");
      boolean isBundle = edit.isOf(Kind.BUNDLE);
      assertNoticed(edit, Ran.of("prove", book), isNoticed || isBundle);
      if (isBundle) {
        Path alone = folder.resolve("sent.zip");
        Files.write(alone, Tree.bytes(BookDeed.folder(book).resolve("bundle.zip")));
        assertNoticed(edit, Ran.of("prove", alone), isNoticed);
      }
    } finally {
      restore();
    }
  }

  private static void assertNoticed(BookEdit edit, Ran ran, boolean isNoticed) {
    boolean isPlan =
        edit.isOf(Kind.PLAN) && ran.flat().contains("plan.json: It was changed since line 1");
    boolean isSaid = isPlan || ran.status() == 1 || ran.status() == 3;
    assertEquals(isNoticed, isSaid, () -> ran.status() + "\n" + ran.all());
  }

  /** Else the first test would prove nothing. */
  @Test
  void what_nobody_edited_is_proved() {
    Ran.of("prove", closed).expect(0);
    Ran.of("prove", BookDeed.folder(closed).resolve("bundle.zip")).expect(0);
    Ran whole = Ran.of("prove", signed).expect(0);
    assertTrue(!whole.flat().contains("plan.json: It was changed"), whole.out());
  }
}
