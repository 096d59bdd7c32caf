package org.flitchbook.desk;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Consumer;
import org.flitchbook.input.Fault;
import org.flitchbook.ledger.Event;
import org.flitchbook.ledger.Ledger;

/**
 * The ledger of a book on the disk, held by one job at a time from opening to closing. The lock is
 * a file of its own: reading a file and letting go of it would give up a lock on that very file.
 */
final class LedgerFile implements AutoCloseable {

  private static final String LOCK = "ledger.lock";
  private static final String TORN = "ledger.torn-";
  private static final int TRIES = 600;
  private static final int PAUSE_MILLIS = 100;

  private final Path book;
  private final FileChannel lock;
  private final List<String> notes = new ArrayList<>();
  private Ledger ledger = Ledger.read(new byte[0]);

  private LedgerFile(Path book, FileChannel lock) {
    this.book = book;
    this.lock = lock;
  }

  /** Reads a book's ledger without holding it; a book without one has no line yet. */
  static Ledger read(Path book) {
    return Ledger.read(bytes(book.resolve(Ledger.FILE)));
  }

  /**
   * Waits until no other job holds the ledger, and holds it.
   *
   * @param progress is told where there is something to wait for
   * @throws Misuse where another job holds it for a minute, or the book can't be written to
   */
  static LedgerFile hold(Path book, Consumer<String> progress) {
    LedgerFile file = new LedgerFile(book, lock(book));
    try {
      file.await(progress);
      file.ledger = read(book);
      return file;
    } catch (IOException unwritable) {
      file.close();
      throw cantWrite(book, unwritable);
    } catch (Misuse refused) {
      file.close();
      throw refused;
    }
  }

  private static FileChannel lock(Path book) {
    try {
      return FileChannel.open(
          book.resolve(LOCK), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
    } catch (IOException unwritable) {
      throw cantWrite(book, unwritable);
    }
  }

  private static Misuse cantWrite(Path where, IOException refused) {
    return new Misuse("can't write to " + where + ": " + Reason.of(refused), refused);
  }

  private void await(Consumer<String> progress) throws IOException {
    for (int tries = 0; !isHeld(); tries++) {
      progress.accept("waiting for another job in this book");
      if (tries == TRIES) {
        throw new Misuse(
            "another job is at work in " + book + " and holds " + LOCK + "; try again after it");
      }
      pause();
    }
  }

  private boolean isHeld() throws IOException {
    try {
      FileLock held = lock.tryLock();
      return held != null;
    } catch (OverlappingFileLockException inThisProgram) {
      return false;
    }
  }

  private static void pause() {
    try {
      Thread.sleep(PAUSE_MILLIS);
    } catch (InterruptedException asked) {
      Thread.currentThread().interrupt();
      throw new Misuse("interrupted while waiting for another job", asked);
    }
  }

  private static byte[] bytes(Path file) {
    try {
      return Files.readAllBytes(file);
    } catch (NoSuchFileException none) {
      return new byte[0];
    } catch (IOException unreadable) {
      throw new Misuse("can't read " + file + ": " + Reason.of(unreadable), unreadable);
    }
  }

  /** Puts a torn last line aside, so that nothing is lost and the next line can be written. */
  private void putTornAside(Fault torn) throws IOException {
    Path file = book.resolve(Ledger.FILE);
    byte[] all = bytes(file);
    Path aside = Disk.free(book, TORN);
    Disk.write(aside, Arrays.copyOfRange(all, ledger.length(), all.length));
    Disk.force(book);
    try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
      channel.truncate(ledger.length()).force(true);
    }
    notes.add(torn + "; it was kept aside as " + aside.getFileName());
  }

  /** What was read; after {@link #append} with the new lines. */
  Ledger ledger() {
    return ledger;
  }

  /** What a person should know about what became of the ledger as it was found. */
  List<String> notes() {
    return notes;
  }

  /**
   * Adds lines and waits until the disk has them. A torn last line is put aside first.
   *
   * @throws Misuse where they can't be written
   */
  void append(List<Event> events) {
    Path file = book.resolve(Ledger.FILE);
    byte[] lines = ledger.append(events);
    try {
      if (ledger.torn().isPresent()) {
        putTornAside(ledger.torn().get());
      }
      write(file, lines);
    } catch (IOException unwritable) {
      throw cantWrite(file, unwritable);
    }
    ledger = ledger.and(lines);
  }

  private void write(Path file, byte[] lines) throws IOException {
    try (FileChannel channel =
        FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE)) {
      Disk.writeAt(channel, ledger.length(), lines);
    }
    Disk.force(book);
  }

  /** Lets the next job have the ledger. */
  @Override
  public void close() {
    try {
      lock.close();
    } catch (IOException stuck) {
      throw new Misuse("can't let go of " + LOCK + ": " + Reason.of(stuck), stuck);
    }
  }
}
