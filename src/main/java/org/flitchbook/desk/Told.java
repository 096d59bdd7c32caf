package org.flitchbook.desk;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.input.SourceFile;
import org.flitchbook.ledger.Deed;
import org.flitchbook.ledger.Event;
import org.flitchbook.ledger.Ledger;
import org.flitchbook.ledger.Line;

/** What the ledger tells of the records of one day, and whether the disk agrees. */
record Told(Path book, LocalDate day, Ledger ledger) {

  /** The word of the fact that holds the moment judged. */
  static final String JUDGED_AT = "judged at";

  /** The moment for which an event was judged; empty where it tells none. */
  static Optional<Instant> judgedAt(Event event) {
    try {
      return Optional.ofNullable(event.facts().get(JUDGED_AT)).map(Instant::parse);
    } catch (DateTimeException noTime) {
      return Optional.empty();
    }
  }

  /** The folder of a revision, as the ledger names it. */
  static String folder(LocalDate day, int revision) {
    return "records/" + day + "/r" + revision;
  }

  /** The line of the last revision. */
  Optional<Line> last() {
    return ledger.last(day, Deed.CLOSED, Deed.AMENDED);
  }

  int revision() {
    return last().map(line -> line.event().revision()).orElse(0);
  }

  /** The records of the last revision that are gone, or not as the ledger has them. */
  List<Fault> damage() {
    return last().stream()
        .flatMap(line -> line.event().outputs().keySet().stream())
        .flatMap(path -> damage(path).stream())
        .toList();
  }

  private Optional<Fault> damage(String path) {
    return tellers(path)
        .reduce((earlier, later) -> later)
        .filter(line -> !isThere(path, line))
        .map(line -> damage(path, line));
  }

  /** The hash of a file as the last line that tells of it has it. */
  Optional<String> hash(String path) {
    return tellers(path).reduce((earlier, later) -> later).map(line -> hash(path, line));
  }

  private Fault damage(String path, Line line) {
    String told = hash(path, line) + ", as line " + line.sequence() + " of the ledger tells";
    String found = Files.isRegularFile(book.resolve(path)) ? "another content" : "no such file";
    return Fault.ask("record", "", Place.of(path), found, "SHA-256 " + told);
  }

  /** The lines that tell what a file is: a signature changes it after it was written. */
  private Stream<Line> tellers(String path) {
    return ledger.lines().stream().filter(line -> line.event().outputs().containsKey(path));
  }

  private static String hash(String path, Line line) {
    return String.valueOf(line.event().outputs().get(path));
  }

  private boolean isThere(String path, Line line) {
    return Shelf.inBook(book, path)
        .filter(file -> file.sha256().equals(hash(path, line)))
        .isPresent();
  }

  /** The inputs of the last revision, from its bundle; empty where that is gone or was changed. */
  Optional<List<SourceFile>> evidence() {
    String path = folder(day, revision()) + "/" + Printing.BUNDLE;
    return last()
        .filter(line -> isThere(path, line))
        .flatMap(line -> Shelf.inBook(book, path))
        .flatMap(file -> BundleRead.of(file.bytes()))
        .map(BundleRead::evidence);
  }
}
