package org.flitchbook.archive;

import static org.flitchbook.message.Message.say;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.flitchbook.book.BookFolder;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.input.SourceFile;
import org.flitchbook.ledger.Event;
import org.flitchbook.ledger.EventType;
import org.flitchbook.ledger.Ledger;
import org.flitchbook.ledger.LedgerLine;
import org.flitchbook.message.Message;

/** What the ledger lists of the records of one day, and whether the disk agrees. */
public record DayLedger(Path book, LocalDate day, Ledger ledger) {

  /** The word of the fact that holds the moment judged. */
  public static final String JUDGED_AT = "judged at";

  /** The moment for which an event was judged; empty where it states none. */
  public static Optional<Instant> judgedAt(Event event) {
    try {
      return Optional.ofNullable(event.facts().get(JUDGED_AT)).map(Instant::parse);
    } catch (DateTimeException noTime) {
      return Optional.empty();
    }
  }

  /** The SHA-256 of each record of a revision, by its path in the book. */
  public static SortedMap<String, String> outputs(
      LocalDate day, int revision, Iterable<SourceFile> records) {
    SortedMap<String, String> written = new TreeMap<>();
    String folder = RecordFolder.path(day, revision) + "/";
    records.forEach(file -> written.put(folder + file.name(), file.sha256()));
    return written;
  }

  /** The SHA-256 of each of some files, by its name. */
  public static SortedMap<String, String> hashes(Iterable<SourceFile> files) {
    SortedMap<String, String> hashes = new TreeMap<>();
    files.forEach(file -> hashes.put(file.name(), file.sha256()));
    return hashes;
  }

  /** The line of the last revision. */
  public Optional<LedgerLine> last() {
    return ledger.last(day, EventType.CLOSED, EventType.AMENDED);
  }

  /** The number of the last revision; 0 where there is none. */
  public int revision() {
    return last().map(line -> line.event().revision()).orElse(0);
  }

  /** The records of the last revision that are gone, or not as the ledger has them. */
  public List<Fault> damage() {
    return last().stream()
        .flatMap(line -> line.event().outputs().keySet().stream())
        .flatMap(path -> damage(path).stream())
        .toList();
  }

  private Optional<Fault> damage(String path) {
    return lines(path)
        .reduce((earlier, later) -> later)
        .filter(line -> !isThere(path, line))
        .map(line -> damage(path, line));
  }

  /** The hash of a file as the last line that lists it has it. */
  public Optional<String> hash(String path) {
    return lines(path).reduce((earlier, later) -> later).map(line -> hash(path, line));
  }

  private Fault damage(String path, LedgerLine line) {
    Message found =
        Files.isRegularFile(book.resolve(path))
            ? say("archive.damage.other", "another content")
            : say("archive.damage.gone", "no such file");
    Message expected =
        say(
            "archive.damage.expected",
            "SHA-256 {0}, as line {1} of the ledger has it",
            hash(path, line),
            line.sequence());
    return Fault.ask("record", "", Place.of(path), found, expected);
  }

  /** The lines that list a file: a signature changes it after it was written. */
  private Stream<LedgerLine> lines(String path) {
    return ledger.lines().stream().filter(line -> line.event().outputs().containsKey(path));
  }

  private static String hash(String path, LedgerLine line) {
    return String.valueOf(line.event().outputs().get(path));
  }

  private boolean isThere(String path, LedgerLine line) {
    return BookFolder.file(book, path)
        .filter(file -> file.sha256().equals(hash(path, line)))
        .isPresent();
  }

  /** The inputs of the last revision, from its bundle; empty where that is gone or was changed. */
  public Optional<List<SourceFile>> evidence() {
    String path = RecordFolder.path(day, revision()) + "/" + Bundle.FILE;
    return last()
        .filter(line -> isThere(path, line))
        .flatMap(line -> BookFolder.file(book, path))
        .flatMap(file -> Bundle.read(file.bytes()))
        .map(bundle -> List.copyOf(bundle.evidence().values()));
  }
}
