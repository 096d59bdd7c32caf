package org.flitchbook.archive;

import static org.flitchbook.message.Message.say;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.flitchbook.book.BookFolder;
import org.flitchbook.disk.Disk;
import org.flitchbook.input.SourceFile;
import org.flitchbook.json.Json;
import org.flitchbook.json.Node;
import org.flitchbook.ledger.Event;
import org.flitchbook.ledger.EventType;
import org.flitchbook.ledger.LedgerLine;
import org.flitchbook.message.Message;
import org.flitchbook.plan.Person;
import org.flitchbook.plan.Plan;
import org.flitchbook.seal.PdfFile;
import org.flitchbook.seal.PdfSignatures;

/**
 * Settles what a close or a signature that was cut off left in a book. A folder that never became a
 * revision is cleared away, since all that it was made from is still there. A finished revision
 * whose line in the ledger is missing gets it, if it is what its own manifest says, and is put
 * aside if not. A signature without its line gets it, if it is valid, made with a key of the plan
 * and over the very record that the ledger lists.
 */
final class Recovery {

  private static final String COMPLETE =
      "complete on the disk, without its line; its files agree with its own manifest";

  private final LedgerFile ledger;
  private final List<Message> notes = new ArrayList<>();

  Recovery(LedgerFile ledger) {
    this.ledger = ledger;
  }

  /**
   * Settles all of it.
   *
   * @param day of whose last revision the signatures are looked at
   * @return what was done, a sentence each
   */
  List<Message> settle(LocalDate day, Plan plan) {
    Path records = RecordFolder.of(ledger.book()).records();
    Disk.writing(
        records,
        () -> {
          for (Path folder : Files.isDirectory(records) ? Disk.list(records) : List.<Path>of()) {
            Optional<LocalDate> closed = Disk.day(folder).filter(d -> Files.isDirectory(folder));
            if (closed.isPresent()) {
              settleRevisions(folder, closed.get());
            }
          }
        });
    settleSignatures(day, plan);
    return notes;
  }

  private void settleRevisions(Path folder, LocalDate day) throws IOException {
    SortedMap<Integer, Path> revisions = new TreeMap<>();
    for (Path each : Disk.list(folder)) {
      RecordFolder.revision(each).ifPresent(number -> revisions.put(number, each));
      if (Disk.name(each).startsWith(Disk.HIDDEN)) {
        Disk.delete(each);
        notes.add(
            say(
                "archive.cleared-away",
                "An unfinished close or signature of {0} was found and cleared away.",
                day));
      }
    }
    for (Map.Entry<Integer, Path> each : revisions.entrySet()) {
      if (!isListed(day, each.getKey())) {
        settle(each.getValue(), day, each.getKey());
      }
    }
  }

  private boolean isListed(LocalDate day, int number) {
    return RecordList.of(ledger.ledger()).closes().stream()
        .map(LedgerLine::event)
        .anyMatch(event -> event.isOf(day) && event.revision() == number);
  }

  private void settle(Path revision, LocalDate day, int number) throws IOException {
    Optional<Event> event =
        number > ledger.day(day).revision() ? missing(revision, day, number) : Optional.empty();
    if (event.isEmpty()) {
      putAside(revision);
      return;
    }
    ledger.append(List.of(event.get()));
    notes.add(
        say(
            "archive.revision-listed",
            "{0} was found complete, but without its line in the ledger; it has line {1} now.",
            RecordFolder.path(day, number),
            ledger.ledger().head().sequence()));
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

  /** The line that a revision should have; empty where its files are not those of its bundle. */
  private Optional<Event> missing(Path revision, LocalDate day, int number) throws IOException {
    SortedMap<String, SourceFile> files = files(revision);
    Optional<Bundle> bundle =
        Optional.ofNullable(files.get(Bundle.FILE))
            .flatMap(zip -> Bundle.read(zip.bytes()))
            .filter(found -> agrees(found, files));
    Optional<Node.Obj> found =
        Optional.ofNullable(files.get("day.json"))
            .flatMap(file -> Json.read(file.name(), file.bytes()).object());
    Optional<String> moment = found.flatMap(Recovery::moment);
    if (bundle.isEmpty() || moment.isEmpty()) {
      return Optional.empty();
    }
    EventType type = ledger.day(day).last().isEmpty() ? EventType.CLOSED : EventType.AMENDED;
    Optional<Node> filing =
        found.flatMap(json -> Optional.ofNullable(json.members().get("filing")));
    return Optional.of(
        ledger
            .event(type)
            .on(day, number)
            .by(text(filing, "by"), text(filing, "reason"))
            .files(
                DayLedger.hashes(bundle.get().evidence().values()),
                DayLedger.outputs(day, number, files.values()))
            .facts(Map.of(DayLedger.JUDGED_AT, moment.get(), RecordList.FOUND, COMPLETE)));
  }

  /** What is no plain file counts as one without a byte, so that nothing is overlooked. */
  private static SortedMap<String, SourceFile> files(Path folder) throws IOException {
    SortedMap<String, SourceFile> files = new TreeMap<>();
    for (Path each : Disk.list(folder)) {
      byte[] bytes = Files.isRegularFile(each) ? Disk.bytes(each) : new byte[0];
      files.put(Disk.name(each), SourceFile.of(Disk.name(each), bytes));
    }
    return files;
  }

  private static boolean agrees(Bundle bundle, SortedMap<String, SourceFile> files) {
    SortedMap<String, SourceFile> others = new TreeMap<>(files);
    others.remove(Bundle.FILE);
    return others.equals(bundle.records());
  }

  private static Optional<String> moment(Node.Obj found) {
    try {
      return found
          .firstText(List.of("judgedAt"))
          .map(text -> OffsetDateTime.parse(text).toInstant().toString());
    } catch (DateTimeException noTime) {
      return Optional.empty();
    }
  }

  private static String text(Optional<Node> filing, String key) {
    return filing.flatMap(node -> node.firstText(List.of(key))).orElse("");
  }

  private void settleSignatures(LocalDate day, Plan plan) {
    ledger.day(day).last().stream()
        .flatMap(line -> line.event().outputs().keySet().stream())
        .filter(path -> path.endsWith(".pdf"))
        .flatMap(path -> BookFolder.file(ledger.book(), path).stream())
        .forEach(file -> settleSignatures(file, day, plan));
  }

  private void settleSignatures(SourceFile file, LocalDate day, Plan plan) {
    byte[] pdf = file.bytes();
    Optional<String> before =
        ledger.day(day).hash(file.name()).filter(hash -> !hash.equals(file.sha256()));
    before
        .flatMap(hash -> PdfFile.signatures(pdf))
        .filter(look -> !look.signatures().isEmpty())
        .filter(look -> hashBeforeLast(look, pdf).equals(before.get()))
        .map(look -> SignatureCheck.of(pdf, look))
        .filter(SignatureCheck::isUntouched)
        .map(check -> check.signatures().get(check.signatures().size() - 1))
        .ifPresent(
            last ->
                plan.people().stream()
                    .filter(person -> person.key(last.fingerprint()).isPresent())
                    .findFirst()
                    .ifPresent(person -> add(file, day, before.get(), last, person)));
  }

  private static String hashBeforeLast(PdfSignatures look, byte[] pdf) {
    int last = look.signatures().size() - 1;
    int end = last == 0 ? look.printed() : look.signatures().get(last - 1).end();
    return SourceFile.of("", Arrays.copyOf(pdf, end)).sha256();
  }

  private void add(
      SourceFile file, LocalDate day, String before, SignatureCheck.Each last, Person person) {
    Event event =
        ledger
            .event(EventType.SIGNED)
            .on(day, ledger.day(day).revision())
            .about(file.baseName())
            .by(person.initials(), "")
            .files(Map.of(file.name(), before), Map.of(file.name(), file.sha256()))
            .facts(
                Map.of(RecordList.BOX, last.signed().field(), RecordList.KEY, last.fingerprint()));
    ledger.append(List.of(event));
    notes.add(
        say(
            "archive.signature-listed",
            "A signature of {0} in {1} was found without its line in the ledger; it has line {2}"
                + " now.",
            person.initials(),
            file.name(),
            ledger.ledger().head().sequence()));
  }
}
