package org.flitchbook.cli;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.flitchbook.OutsideProgram;
import org.flitchbook.ledger.Event;
import org.flitchbook.ledger.EventType;
import org.flitchbook.ledger.Ledger;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A close that gets no room on the disk, may not write, or is not alone. */
@Tag("machines")
final class StarvedTest {

  /** 64 kB: less than a record's bundle. */
  private static final int TOO_FEW_BLOCKS = 128;

  /** 2 MB: more than any record of the example, less than {@link #longLedger}. */
  private static final int ENOUGH_FOR_RECORDS = 4096;

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
  void without_room_for_the_records_nothing_is_there_and_the_next_close_is_the_first()
      throws Exception {
    Ran ran = Child.starved(OutsideProgram.find("sh"), TOO_FEW_BLOCKS, "close", day).expect(2);
    assertAll(
        () ->
            assertTrue(
                ran.out().contains("flitchbook: can't write to " + records + ": File too large\n"),
                ran.out()),
        () -> assertEquals(List.of(), Tree.names(records)),
        () -> assertFalse(Files.exists(Chain.file(book))));
    Ran.of("close", day).expect(0);
    assertEquals(List.of("closed r1"), Chain.events(book));
  }

  @Test
  void without_room_for_a_line_the_revision_waits_for_it() throws Exception {
    byte[] before = longLedger();
    Path shell = OutsideProgram.find("sh");
    Ran ran = Child.starved(shell, ENOUGH_FOR_RECORDS, "close", day).expect(2);
    Map<String, String> written = Tree.hashes(records.resolve("r1"));
    assertAll(
        () ->
            assertTrue(
                ran.out().contains("can't write to " + Chain.file(book) + ": File too large"),
                ran.out()),
        () -> assertEquals(7, written.size()),
        () -> assertEquals(before.length, Tree.bytes(Chain.file(book)).length));
    String out = Ran.of("close", day).expect(0).out();
    assertTrue(out.contains("r1 was found complete, but without its line"), out);
    assertEquals(written, Tree.hashes(records.resolve("r1")));
    assertEquals(List.of(), Chain.faults(book));
  }

  private byte[] longLedger() throws Exception {
    Event event =
        Event.of(EventType.CLOSED, Instant.EPOCH, "0")
            .about("a lot of long ago")
            .facts(Map.of("told", "x".repeat(25_000)));
    byte[] bytes = Ledger.read(new byte[0]).append(Collections.nCopies(100, event));
    Files.write(Chain.file(book), bytes);
    return bytes;
  }

  @Test
  void a_file_in_the_place_of_the_records_is_told() throws Exception {
    Files.writeString(book.resolve("records"), "in the way");
    assertEquals(
        "flitchbook: can't write to " + records + ": " + book.resolve("records") + " is a file\n",
        Ran.of("close", day).expect(2).err());
    assertFalse(Files.exists(Chain.file(book)));
  }

  @Test
  void a_folder_in_the_place_of_the_ledger_is_told() throws Exception {
    Files.createDirectory(Chain.file(book));
    assertEquals(
        "flitchbook: can't read " + Chain.file(book) + ": a folder, not a file\n",
        Ran.of("close", day).expect(2).err());
  }

  @Test
  void a_book_that_may_not_be_written_to_is_told() throws Exception {
    book.toFile().setWritable(false);
    boolean root = Files.isWritable(book);
    try {
      Ran ran = Ran.of("close", day);
      assertEquals(
          root ? "" : "flitchbook: can't write to " + book + ": that is not permitted\n",
          ran.err());
    } finally {
      book.toFile().setWritable(true);
    }
  }

  @Test
  void without_room_a_record_stays_unsigned_and_the_next_signing_goes_through() throws Exception {
    Smokeyard yard = Smokeyard.closed(folder.resolve("yard"));
    byte[] before = Tree.bytes(yard.record);
    Map<String, String> whole = Tree.hashes(yard.book);
    Object[] words = yard.words("sign", yard.record, "--as", "MA");
    Ran ran = Child.starved(OutsideProgram.find("sh"), TOO_FEW_BLOCKS, words).expect(2);
    assertAll(
        () ->
            assertTrue(
                ran.out().contains("can't write to " + yard.record + ": File too large"),
                ran.out()),
        () -> assertArrayEquals(before, Tree.bytes(yard.record)),
        () -> assertEquals(whole, Tree.hashes(yard.book)));
    Ran.of(words).expect(0);
    Ran.of("prove", yard.book).expect(0);
  }

  @Test
  void a_folder_that_may_not_be_written_to_keeps_its_record_unsigned() throws Exception {
    Smokeyard yard = Smokeyard.closed(folder.resolve("yard"));
    Path revision = yard.record.getParent();
    byte[] before = Tree.bytes(yard.record);
    revision.toFile().setWritable(false);
    boolean root = Files.isWritable(revision);
    try {
      Ran ran = yard.sign("MA");
      String refused = "flitchbook: can't write to " + yard.record + ": that is not permitted\n";
      String said = ran.err(); // after what it says of keys that are for tests only
      assertEquals(!root, said.endsWith(refused), said);
      assertEquals(!root, said.contains("flitchbook: "), said);
      assertEquals(root, before.length < Tree.bytes(yard.record).length);
    } finally {
      revision.toFile().setWritable(true);
    }
  }

  @Test
  void two_signings_of_one_box_at_once_are_one_after_the_other() throws Exception {
    Smokeyard yard = Smokeyard.closed(folder.resolve("yard"));
    Object[] words = yard.words("sign", yard.record, "--as", "MA");
    Child first = Child.start(words);
    awaitLock(yard.book, first);
    int well = Ran.of(words).status();
    assertEquals(2, well + first.ended().status());
    assertEquals(List.of("closed r1", "signed r1 26047-B1.pdf"), Chain.events(yard.book));
    Ran.of("prove", yard.book).expect(0);
  }

  /** Waits until another process is at work in a book. */
  private static void awaitLock(Path book, Child other) throws Exception {
    boolean held = false;
    while (!held) {
      assertFalse(other.process().waitFor(2, TimeUnit.MILLISECONDS));
      Path lock = book.resolve("ledger.lock");
      held = Files.exists(lock) && !isFree(lock);
    }
  }

  private static boolean isFree(Path lock) throws Exception {
    try (FileChannel channel = FileChannel.open(lock, StandardOpenOption.WRITE);
        FileLock taken = channel.tryLock()) {
      return taken != null;
    }
  }

  /** Both wait at first: a third is at work. */
  @Test
  void a_close_waits_for_the_one_that_is_at_work_and_two_are_one_after_the_other()
      throws Exception {
    Child first;
    try (FileChannel other =
            FileChannel.open(
                book.resolve("ledger.lock"), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
        var held = other.lock()) {
      assertTrue(held.isValid());
      first = Child.start("close", day);
      assertFalse(first.process().waitFor(1, TimeUnit.SECONDS));
      assertFalse(Files.exists(records));
    }
    awaitLock(book, first);
    Ran second = Ran.of("close", day).expect(0);
    String said = first.ended().expect(0).out() + second.out();
    assertAll(
        () -> assertTrue(said.contains("Nothing new: "), said),
        () -> assertTrue(said.contains("Written:"), said),
        () -> assertEquals(List.of("closed r1"), Chain.events(book)),
        () -> assertEquals(List.of(), Chain.faults(book)));
  }

  @Test
  void a_person_at_the_terminal_is_asked_for_reason_and_initials() throws Exception {
    Tree.delete(book);
    Tree.closedExample(folder);
    Tree.edit(day.resolve("chill.csv"), "4222", "4223");
    String said = Ran.asked("I misread the scale\nMA\n", "close", day).expect(0).all();
    var line = Chain.last(book);
    assertAll(
        () -> assertTrue(said.contains("Why did this change? "), said),
        () -> assertTrue(said.contains("Your initials, as in the plan: "), said),
        () -> assertTrue(said.contains("2026-02-24/chill.csv:6:value: changed from: "), said),
        () -> assertEquals("I misread the scale", line.get("reason").asText()),
        () -> assertEquals("MA", line.get("by").asText()));
  }

  @Test
  void a_person_who_gives_no_reason_is_refused() throws Exception {
    Tree.delete(book);
    Tree.closedExample(folder);
    Tree.edit(day.resolve("chill.csv"), "4222", "4223");
    Ran ran = Ran.asked("\n", "close", day).expect(2);
    assertTrue(ran.all().contains("r1 is kept as it is, and nothing was written."), ran.all());
    assertEquals(List.of("closed r1"), Chain.events(book));
  }
}
