package org.flitchbook.archive;

import static org.flitchbook.message.Message.say;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.flitchbook.book.BookFolder;
import org.flitchbook.input.SourceFile;
import org.flitchbook.ledger.Event;
import org.flitchbook.ledger.EventType;
import org.flitchbook.message.Message;
import org.flitchbook.plan.Person;
import org.flitchbook.plan.Plan;
import org.flitchbook.seal.PdfFile;
import org.flitchbook.seal.PdfSignatures;

/**
 * Signatures that stand in a record and not in the ledger, because something was cut off between
 * the two. One that is valid, made with a key of the plan and over the very record that the ledger
 * lists, gets its line.
 *
 * @param day of whose last revision the records are looked at
 * @param notes takes what was done, a sentence each
 */
record StraySignatures(LedgerFile ledger, LocalDate day, Plan plan, List<Message> notes) {

  /** Settles all of them. */
  void settle() {
    ledger.day(day).last().stream()
        .flatMap(line -> line.event().outputs().keySet().stream())
        .filter(path -> path.endsWith(".pdf"))
        .flatMap(path -> BookFolder.file(ledger.book(), path).stream())
        .forEach(this::settle);
  }

  private void settle(SourceFile file) {
    byte[] pdf = file.bytes();
    Optional<String> before =
        ledger.day(day).hash(file.name()).filter(hash -> !hash.equals(file.sha256()));
    before
        .flatMap(hash -> PdfFile.signatures(pdf))
        .filter(look -> !look.signatures().isEmpty())
        .filter(look -> hashBeforeLast(look, pdf).equals(before.get()))
        .map(look -> SignatureCheck.of(pdf, look))
        .filter(SignatureCheck::isUntouched)
        .ifPresent(check -> add(file, before.get(), check));
  }

  private static String hashBeforeLast(PdfSignatures look, byte[] pdf) {
    int last = look.signatures().size() - 1;
    int end = last == 0 ? look.printed() : look.signatures().get(last - 1).end();
    return SourceFile.of("", Arrays.copyOf(pdf, end)).sha256();
  }

  private void add(SourceFile file, String before, SignatureCheck check) {
    SignatureCheck.Each last = check.signatures().get(check.signatures().size() - 1);
    plan.people().stream()
        .filter(person -> person.key(last.fingerprint()).isPresent())
        .findFirst()
        .ifPresent(person -> add(file, before, last, person));
  }

  private void add(SourceFile file, String before, SignatureCheck.Each last, Person person) {
    Event event =
        ledger
            .event(EventType.SIGNED)
            .on(day, ledger.day(day).revision())
            .about(file.baseName())
            .by(person.initials(), "")
            .files(Map.of(file.name(), before), Map.of(file.name(), file.sha256()))
            .facts(Map.of("box", last.signed().field(), "key", last.fingerprint()));
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
