package org.flitchbook.desk;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.flitchbook.input.SourceFile;
import org.flitchbook.ledger.Deed;
import org.flitchbook.ledger.Event;
import org.flitchbook.plan.Person;
import org.flitchbook.plan.Plan;
import org.flitchbook.seal.PdfFile;
import org.flitchbook.seal.PdfSignatures;

/**
 * Signatures that stand in a record and not in the ledger, because something was cut off between
 * the two. One that is valid, made with a key of the plan and over the very record that the ledger
 * tells of, gets its line.
 */
final class UntoldSignatures {

  private final Path book;
  private final LocalDate day;
  private final LedgerFile ledger;
  private final Plan plan;
  private final Caller caller;
  private final List<String> notes = new ArrayList<>();

  /**
   * @param day of whose last revision the records are looked at
   */
  UntoldSignatures(Path book, LocalDate day, LedgerFile ledger, Plan plan, Caller caller) {
    this.book = book;
    this.day = day;
    this.ledger = ledger;
    this.plan = plan;
    this.caller = caller;
  }

  /** Settles all of them. Says what was done, a sentence each. */
  List<String> settle() {
    told().last().stream()
        .flatMap(line -> line.event().outputs().keySet().stream())
        .filter(path -> path.endsWith(".pdf") && Files.isRegularFile(book.resolve(path)))
        .forEach(this::settle);
    return notes;
  }

  private Told told() {
    return new Told(book, day, ledger.ledger());
  }

  private void settle(String path) {
    byte[] pdf = read(book.resolve(path));
    String now = SourceFile.of(path, pdf).sha256();
    Optional<String> before = told().hash(path).filter(hash -> !hash.equals(now));
    before
        .flatMap(hash -> PdfFile.signatures(pdf))
        .filter(look -> !look.signatures().isEmpty())
        .filter(look -> hashBeforeLast(look, pdf).equals(before.get()))
        .map(look -> SealsRead.of(pdf, look))
        .filter(SealsRead::isUntouched)
        .ifPresent(seals -> add(path, before.get(), now, seals));
  }

  private static byte[] read(Path file) {
    try {
      return Files.readAllBytes(file);
    } catch (IOException unreadable) {
      throw new Misuse("can't read " + file + ": " + Reason.of(unreadable), unreadable);
    }
  }

  private static String hashBeforeLast(PdfSignatures look, byte[] pdf) {
    int last = look.signatures().size() - 1;
    int end = last == 0 ? look.printed() : look.signatures().get(last - 1).end();
    return SourceFile.of("", Arrays.copyOf(pdf, end)).sha256();
  }

  private void add(String path, String before, String now, SealsRead seals) {
    SealsRead.Each last = seals.signatures().get(seals.signatures().size() - 1);
    plan.people().stream()
        .filter(person -> person.key(last.fingerprint()).isPresent())
        .findFirst()
        .ifPresent(person -> add(path, before, now, last, person));
  }

  private void add(String path, String before, String now, SealsRead.Each last, Person person) {
    String name = path.substring(path.lastIndexOf('/') + 1);
    Event event =
        Event.of(Deed.SIGNED, caller.now(), caller.tool())
            .on(day, told().revision())
            .about(name)
            .by(person.initials(), "")
            .files(Map.of(path, before), Map.of(path, now))
            .facts(Map.of("box", last.signed().field(), "key", last.fingerprint()));
    ledger.append(List.of(event));
    notes.add(
        "A signature of "
            + person.initials()
            + " in "
            + path
            + " was found without its line in the ledger; it has line "
            + ledger.ledger().head().sequence()
            + " now.");
  }
}
