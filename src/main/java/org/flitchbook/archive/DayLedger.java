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
import org.flitchbook.book.BookFolder;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.input.SourceFile;
import org.flitchbook.ledger.Event;
import org.flitchbook.ledger.Ledger;
import org.flitchbook.ledger.LedgerLine;
import org.flitchbook.message.Message;

/** What the ledger lists of the records of one day, and whether the disk agrees. */
public record DayLedger(Path book, LocalDate day, Ledger ledger) {

  /** The word of the fact that holds the moment judged. */
  public static final String JUDGED_AT = "judged at";

  /** What the fact begins with that holds the verdict of a lot. */
  public static final String VERDICT_OF = "verdict of ";

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

  /** The last close of the day that counts. */
  public Optional<LedgerLine> last() {
    return RecordList.of(ledger).lastClose(day);
  }

  /** The number of the last revision; 0 where there is none. */
  public int revision() {
    return last().map(line -> line.event().revision()).orElse(0);
  }

  /** The records of the last revision that are gone, or not as the ledger has them. */
  public List<Fault> damage() {
    RecordList list = RecordList.of(ledger);
    return list.lastClose(day).stream()
        .flatMap(line -> line.event().outputs().keySet().stream())
        .flatMap(
            path ->
                list
                    .last(path)
                    .filter(state -> !isThere(path, state.hash()))
                    .map(state -> damage(path, state))
                    .stream())
        .toList();
  }

  private Fault damage(String path, RecordList.State state) {
    Message found =
        Files.isRegularFile(book.resolve(path))
            ? say("archive.damage.other", "another content")
            : say("archive.damage.gone", "no such file");
    Message expected =
        say(
            "archive.damage.expected",
            "SHA-256 {0}, as line {1} of the ledger has it",
            state.hash(),
            state.line().sequence());
    return Fault.ask("record", "", Place.of(path), found, expected);
  }

  /** The hash of a file as the ledger lists it now: a signature changes it after the close. */
  public Optional<String> hash(String path) {
    return RecordList.of(ledger).last(path).map(RecordList.State::hash);
  }

  private boolean isThere(String path, String hash) {
    return BookFolder.file(book, path).map(SourceFile::sha256).equals(Optional.of(hash));
  }

  /** The inputs of the last revision, from its bundle; empty where that is gone or was changed. */
  public Optional<List<SourceFile>> evidence() {
    String path = RecordFolder.path(day, revision()) + "/" + Bundle.FILE;
    return BookFolder.file(book, path)
        .filter(file -> Optional.of(file.sha256()).equals(hash(path)))
        .flatMap(file -> Bundle.read(file.bytes()))
        .map(bundle -> List.copyOf(bundle.evidence().values()));
  }
}
