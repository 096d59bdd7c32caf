package org.flitchbook.desk;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import org.flitchbook.ledger.Deed;
import org.flitchbook.ledger.Line;

/**
 * What a close that was cut off left among the records: a folder that never became a revision is
 * cleared away, since all that it was made from is still there; a finished revision whose line is
 * missing gets it, if it is what its own manifest says, and is put aside if not.
 */
final class Strays {

  /** What the names of folders begin with that were found and could not be proved. */
  static final String ASIDE = "aside-";

  private final Path book;
  private final LedgerFile ledger;
  private final Caller caller;
  private final List<String> notes = new ArrayList<>();

  Strays(Path book, LedgerFile ledger, Caller caller) {
    this.book = book;
    this.ledger = ledger;
    this.caller = caller;
  }

  /** Settles all of them. Says what was done, a sentence each. */
  List<String> settle() {
    try {
      for (Path folder : list(book.resolve("records"))) {
        Optional<LocalDate> day = day(folder);
        if (day.isPresent()) {
          settle(folder, day.get());
        }
      }
    } catch (IOException refused) {
      String where = book.resolve("records").toString();
      throw new Misuse("can't tidy " + where + ": " + Reason.of(refused), refused);
    }
    return notes;
  }

  private static List<Path> list(Path folder) throws IOException {
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    try (Stream<Path> entries = Files.list(folder)) {
      return entries.sorted().toList();
    }
  }

  private static Optional<LocalDate> day(Path folder) {
    try {
      return Optional.of(LocalDate.parse(name(folder)));
    } catch (DateTimeException otherFolder) {
      return Optional.empty();
    }
  }

  private static String name(Path path) {
    return String.valueOf(path.getFileName());
  }

  private void settle(Path folder, LocalDate day) throws IOException {
    List<Path> entries = list(folder);
    for (Path each : entries) {
      if (name(each).startsWith(Cabinet.HIDDEN)) {
        Disk.delete(each);
        notes.add("An unfinished close or signature of " + day + " was found and cleared away.");
      }
    }
    List<Path> revisions =
        entries.stream()
            .filter(each -> Cabinet.revision(each).isPresent())
            .sorted(Comparator.comparing(each -> Cabinet.revision(each).orElse(0)))
            .toList();
    for (Path each : revisions) {
      settle(each, day, Cabinet.revision(each).orElseThrow());
    }
  }

  private void settle(Path revision, LocalDate day, int number) throws IOException {
    if (isTold(day, number)) {
      return;
    }
    Told told = new Told(book, day, ledger.ledger());
    Optional<Found> found =
        number > told.revision() ? Found.read(revision, day, number) : Optional.empty();
    if (found.isEmpty()) {
      putAside(revision);
    } else {
      add(found.get(), told.last().isEmpty() ? Deed.CLOSED : Deed.AMENDED);
    }
  }

  private void add(Found found, Deed deed) {
    ledger.append(List.of(found.event(deed, caller.now(), caller.tool())));
    notes.add(
        Told.folder(found.day(), found.number())
            + " was found complete, but without its line in the ledger; it has line "
            + ledger.ledger().head().sequence()
            + " now.");
  }

  private boolean isTold(LocalDate day, int number) {
    return ledger.ledger().lines().stream()
        .map(Line::event)
        .filter(event -> event.is(Deed.CLOSED) || event.is(Deed.AMENDED))
        .anyMatch(event -> event.isOf(day) && event.revision() == number);
  }

  private void putAside(Path revision) throws IOException {
    Path folder = Objects.requireNonNull(revision.getParent());
    Path aside = Disk.free(folder, ASIDE);
    Files.move(revision, aside, StandardCopyOption.ATOMIC_MOVE);
    Disk.force(folder);
    notes.add(
        revision
            + " is not in the ledger and not what its own manifest says; it was put aside as "
            + name(aside)
            + ".");
  }
}
