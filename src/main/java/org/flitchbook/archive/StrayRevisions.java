package org.flitchbook.archive;

import static org.flitchbook.message.Message.say;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.flitchbook.disk.Disk;
import org.flitchbook.ledger.EventType;
import org.flitchbook.ledger.LedgerLine;
import org.flitchbook.message.Message;

/**
 * What a close that was cut off left among the records: a folder that never became a revision is
 * cleared away, since all that it was made from is still there; a finished revision whose line is
 * missing gets it, if it is what its own manifest says, and is put aside if not.
 *
 * @param notes takes what was done, a sentence each
 */
record StrayRevisions(LedgerFile ledger, List<Message> notes) {

  /** Settles all of them. */
  void settle() {
    Path records = RecordFolder.of(ledger.book()).records();
    Disk.writing(
        records,
        () -> {
          for (Path folder : list(records)) {
            Optional<LocalDate> day = Disk.day(folder);
            if (day.isPresent()) {
              settle(folder, day.get());
            }
          }
        });
  }

  private static List<Path> list(Path folder) {
    return Files.isDirectory(folder) ? Disk.list(folder) : List.of();
  }

  private void settle(Path folder, LocalDate day) throws IOException {
    List<Path> entries = list(folder);
    for (Path each : entries) {
      if (Disk.name(each).startsWith(Disk.HIDDEN)) {
        Disk.delete(each);
        notes.add(
            say(
                "archive.cleared-away",
                "An unfinished close or signature of {0} was found and cleared away.",
                day));
      }
    }
    List<Path> revisions =
        entries.stream()
            .filter(each -> RecordFolder.revision(each).isPresent())
            .sorted(Comparator.comparing(each -> RecordFolder.revision(each).orElse(0)))
            .toList();
    for (Path each : revisions) {
      settle(each, day, RecordFolder.revision(each).orElseThrow());
    }
  }

  private void settle(Path revision, LocalDate day, int number) throws IOException {
    if (isListed(day, number)) {
      return;
    }
    DayLedger known = ledger.day(day);
    Optional<UnlistedRevision> found =
        number > known.revision() ? UnlistedRevision.read(revision, day, number) : Optional.empty();
    if (found.isEmpty()) {
      putAside(revision);
    } else {
      add(found.get(), known.last().isEmpty() ? EventType.CLOSED : EventType.AMENDED);
    }
  }

  private void add(UnlistedRevision found, EventType type) {
    ledger.append(List.of(found.completed(ledger.event(type))));
    notes.add(
        say(
            "archive.revision-listed",
            "{0} was found complete, but without its line in the ledger; it has line {1} now.",
            RecordFolder.path(found.day(), found.number()),
            ledger.ledger().head().sequence()));
  }

  private boolean isListed(LocalDate day, int number) {
    return ledger.ledger().lines().stream()
        .map(LedgerLine::event)
        .filter(event -> event.is(EventType.CLOSED) || event.is(EventType.AMENDED))
        .anyMatch(event -> event.isOf(day) && event.revision() == number);
  }

  private void putAside(Path revision) throws IOException {
    Path folder = Objects.requireNonNull(revision.getParent());
    Path aside = Disk.free(folder, LedgerFile.ASIDE);
    Files.move(revision, aside, StandardCopyOption.ATOMIC_MOVE);
    Disk.force(folder);
    notes.add(
        say(
            "archive.put-aside",
            "{0} is not in the ledger and not what its own manifest says; it was put aside as"
                + " {1}.",
            revision,
            Disk.name(aside)));
  }
}
