package org.flitchbook.archive;

import static org.flitchbook.message.Message.say;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Function;
import org.flitchbook.disk.Disk;
import org.flitchbook.input.Fault;
import org.flitchbook.job.JobResult;
import org.flitchbook.job.Session;
import org.flitchbook.job.UsageException;
import org.flitchbook.ledger.Event;
import org.flitchbook.ledger.EventType;
import org.flitchbook.ledger.Head;
import org.flitchbook.ledger.Ledger;
import org.flitchbook.message.Message;
import org.flitchbook.plan.Plan;

/**
 * The ledger of a book on the disk, held by one job at a time. The lock is a file of its own:
 * reading a file and letting go of it would give up a lock on that very file.
 */
public final class LedgerFile {

  /** What the names of folders begin with that were found and could not be proved. */
  public static final String ASIDE = "aside-";

  private static final String LOCK = "ledger.lock";
  private static final String TORN = "ledger.torn-";
  private static final int TRIES = 600;
  private static final int PAUSE_MILLIS = 100;

  private final Path book;
  private final Session session;
  private final List<Message> notes = new ArrayList<>();
  private Ledger ledger = Ledger.read(new byte[0]);

  private LedgerFile(Path book, Session session) {
    this.book = book;
    this.session = session;
  }

  /** Reads a book's ledger without holding it; a book without one has no line yet. */
  public static Ledger read(Path book) {
    return Ledger.read(bytes(book));
  }

  private static byte[] bytes(Path book) {
    Path file = book.resolve(Ledger.FILE);
    return Files.exists(file, LinkOption.NOFOLLOW_LINKS)
        ? Disk.reading(
            file,
            () -> {
              Disk.requireFile(book, file);
              return Disk.bytes(file);
            })
        : new byte[0];
  }

  /**
   * Waits until no other job holds the ledger, holds it, and does a job with it. Where the chain is
   * broken, its faults are the result and nothing is done.
   *
   * @throws UsageException where another job holds it for a minute, or the book can't be written to
   */
  public static JobResult hold(Path book, Session session, Function<LedgerFile, JobResult> job) {
    LedgerFile file = new LedgerFile(book, session);
    try (FileChannel lock = lock(book)) {
      file.await(lock);
      file.ledger = read(book);
      List<Fault> broken = file.ledger.faults();
      return broken.isEmpty() ? job.apply(file) : JobResult.broken(broken);
    } catch (IOException refused) {
      throw Disk.cantWrite(book, refused);
    }
  }

  private static FileChannel lock(Path book) throws IOException {
    Path records = RecordFolder.of(book).records();
    if (Files.exists(records)) {
      Disk.writing(records, () -> Disk.requireWithin(book, records));
    }
    try {
      return Disk.open(book, LOCK);
    } catch (IOException refused) {
      throw Disk.cantWrite(Files.exists(book.resolve(LOCK)) ? book.resolve(LOCK) : book, refused);
    }
  }

  private void await(FileChannel lock) throws IOException {
    for (int tries = 0; !isHeld(lock); tries++) {
      session.progress(say("archive.waiting", "waiting for another job in this book"));
      if (tries == TRIES) {
        throw new UsageException(
            "archive.busy",
            "another job is at work in {0} and holds {1}; try again after it",
            book,
            LOCK);
      }
      pause();
    }
  }

  private static boolean isHeld(FileChannel lock) throws IOException {
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
      throw new UsageException(
          asked, "archive.interrupted", "interrupted while waiting for another job");
    }
  }

  /** What was read; after {@link #append} with the new lines. */
  public Ledger ledger() {
    return ledger;
  }

  /** What the ledger lists of a day now. */
  public DayLedger day(LocalDate day) {
    return new DayLedger(book, day, ledger);
  }

  Path book() {
    return book;
  }

  /** A new line, without more than its kind and its time. */
  public Event event(EventType type) {
    return Event.of(type, session.now(), session.tool());
  }

  /** What a person should know about what became of the ledger as it was found. */
  public List<Message> notes() {
    return notes;
  }

  /**
   * Settles what was cut off in this book before: gives finished revisions and signatures their
   * lines, and clears away the rest.
   *
   * @param day of whose last revision the signatures are looked at
   * @return what was done, a sentence each
   */
  public List<Message> settle(LocalDate day, Plan plan) {
    return new Recovery(this).settle(day, plan);
  }

  /**
   * Adds lines and waits until the disk has them. A torn last line is put aside first.
   *
   * @throws UsageException where they can't be written
   */
  public void append(List<Event> events) {
    Path file = book.resolve(Ledger.FILE);
    byte[] lines = ledger.append(events);
    Disk.writing(
        file,
        () -> {
          if (ledger.torn().isPresent()) {
            putTornAside(ledger.torn().get());
          }
          try (FileChannel channel = Disk.open(book, Ledger.FILE)) {
            Disk.writeAt(channel, ledger.length(), lines);
          }
          Disk.force(book);
        });
    ledger = ledger.and(lines);
  }

  /** Puts a torn last line aside, so that nothing is lost and the next line can be written. */
  private void putTornAside(Fault torn) throws IOException {
    byte[] all = bytes(book);
    Path aside = Disk.free(book, TORN);
    Disk.write(aside, Arrays.copyOfRange(all, ledger.length(), all.length));
    Disk.force(book);
    try (FileChannel channel = Disk.open(book, Ledger.FILE)) {
      channel.truncate(ledger.length()).force(true);
    }
    notes.add(
        say("archive.torn", "{0}; it was kept aside as {1}", torn.message(), Disk.name(aside)));
  }

  /** What a person is told who may keep it elsewhere. */
  public Message end() {
    Head head = ledger.head();
    return say(
        "archive.end", "The ledger's last line is now {0}, hash {1}", head.sequence(), head.hash());
  }
}
