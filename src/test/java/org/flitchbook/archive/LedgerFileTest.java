package org.flitchbook.archive;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.flitchbook.job.JobResult;
import org.flitchbook.job.Session;
import org.flitchbook.job.UsageException;
import org.flitchbook.ledger.Event;
import org.flitchbook.ledger.EventType;
import org.flitchbook.ledger.Ledger;
import org.flitchbook.ledger.LedgerLine;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The ledger on the disk: what is added, and what becomes of a write that was cut off. */
final class LedgerFileTest {

  private static final Event CLOSED =
      Event.of(EventType.CLOSED, Instant.parse("2026-02-24T22:13:05Z"), "0.2.0");

  @TempDir private Path book;

  private void hold(Path folder, Consumer<LedgerFile> job) {
    Session nobody = new Session(doing -> {}, Clock.systemUTC(), ask -> Optional.empty(), "0.2.0");
    LedgerFile.hold(
        folder,
        nobody,
        ledger -> {
          job.accept(ledger);
          return JobResult.well("");
        });
  }

  private void add(String what) {
    hold(book, ledger -> ledger.append(List.of(CLOSED.about(what))));
  }

  @Test
  void lines_are_added_at_the_end() {
    add("first");
    add("second");
    Ledger ledger = LedgerFile.read(book);
    assertEquals(List.of(), ledger.faults());
    assertEquals(
        List.of("first", "second"),
        ledger.lines().stream().map(LedgerLine::event).map(Event::about).toList());
  }

  @Test
  void a_book_without_a_ledger_has_no_line_and_gets_no_file_by_reading() {
    assertEquals(List.of(), LedgerFile.read(book).lines());
    assertFalse(Files.exists(book.resolve(Ledger.FILE)));
  }

  @Test
  void a_torn_last_line_is_kept_aside_and_said() throws Exception {
    add("first");
    tear("{\"about\":\"sec");
    List<String> notes = new ArrayList<>();
    hold(
        book,
        ledger -> {
          ledger.append(List.of(CLOSED.about("second")));
          ledger.notes().forEach(note -> notes.add(note.toString()));
        });
    assertEquals(
        List.of(
            "ledger.jsonl:2: found 13 bytes of a line that was never finished, expected a line"
                + " feed at its end; it was kept aside as ledger.torn-1"),
        notes);
    assertAll(
        () -> assertEquals(2, LedgerFile.read(book).lines().size()),
        () -> assertEquals(List.of(), LedgerFile.read(book).faults()),
        () -> assertEquals("{\"about\":\"sec", Files.readString(book.resolve("ledger.torn-1"))));
  }

  @Test
  void what_was_kept_aside_is_never_written_over() throws Exception {
    for (String torn : List.of("one", "two")) {
      tear(torn);
      add("after it");
    }
    assertEquals("one", Files.readString(book.resolve("ledger.torn-1")));
    assertEquals("two", Files.readString(book.resolve("ledger.torn-2")));
  }

  private void tear(String torn) throws Exception {
    Files.write(
        book.resolve(Ledger.FILE),
        torn.getBytes(UTF_8),
        StandardOpenOption.CREATE,
        StandardOpenOption.APPEND);
  }

  @Test
  void a_book_that_is_gone_is_told_in_words() {
    Path gone = book.resolve("gone");
    UsageException told = assertThrows(UsageException.class, () -> hold(gone, ledger -> {}));
    assertTrue(told.getMessage().startsWith("can't write to " + gone + ": there is no such"));
  }
}
