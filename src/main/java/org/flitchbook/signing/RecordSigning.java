package org.flitchbook.signing;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import org.flitchbook.archive.DayLedger;
import org.flitchbook.archive.LedgerFile;
import org.flitchbook.archive.RecordFile;
import org.flitchbook.archive.SignatureCheck;
import org.flitchbook.book.BookFolder;
import org.flitchbook.book.PlanVersions;
import org.flitchbook.disk.Disk;
import org.flitchbook.evidence.EnclosedEvidence;
import org.flitchbook.input.SourceFile;
import org.flitchbook.job.JobResult;
import org.flitchbook.job.Session;
import org.flitchbook.job.UsageException;
import org.flitchbook.keys.KeyFolder;
import org.flitchbook.keys.Passphrase;
import org.flitchbook.ledger.Event;
import org.flitchbook.ledger.EventType;
import org.flitchbook.ledger.Head;
import org.flitchbook.ledger.Ledger;
import org.flitchbook.pdf.Autograph;
import org.flitchbook.pdf.Look;
import org.flitchbook.pdf.Pdf;
import org.flitchbook.plan.PersonKey;
import org.flitchbook.plan.Plan;
import org.flitchbook.sign.CertificateInfo;
import org.flitchbook.sign.OpenedKey;
import org.flitchbook.sign.Signing;
import org.flitchbook.sign.SigningKey;

/**
 * Signs a record: checks that it is as it was printed and that the person may, fills the box, and
 * adds a line to the ledger. First the file is put in place, then its line is written.
 */
public final class RecordSigning {

  /** Room for a signature alone, and for one with a time stamp in it. */
  private static final int ROOM = 8192;

  private static final int ROOM_WITH_STAMP = 24576;

  private final SignRequest request;
  private final RecordFile record;
  private final Passphrase passphrase;
  private final Session session;

  private RecordSigning(Session session, SignRequest request, Passphrase passphrase) {
    this.session = session;
    this.request = request;
    this.passphrase = passphrase;
    this.record = RecordFile.of(request.file());
  }

  /**
   * Signs a record, and adds a line to the ledger of the book that it lies in.
   *
   * @throws UsageException where the person may not, where the record was changed after it was
   *     printed, or where no time stamp can be had
   */
  public static JobResult sign(Session session, SignRequest request, Passphrase passphrase) {
    RecordSigning signing = new RecordSigning(session, request, passphrase);
    return signing
        .record
        .filed()
        .map(
            filed ->
                LedgerFile.hold(filed.book(), session, ledger -> signing.sign(Optional.of(ledger))))
        .orElseGet(() -> signing.sign(Optional.empty()));
  }

  private JobResult sign(Optional<LedgerFile> ledger) {
    byte[] pdf = record.bytes();
    Optional<Look> look = Pdf.look(pdf);
    if (look.isEmpty()) {
      return JobResult.broken(List.of(record.noPdf()));
    }
    PlanVersions versions = plan(pdf);
    Optional<Plan> plan = versions.now();
    if (plan.isEmpty()) {
      return JobResult.broken(versions.faults());
    }
    List<String> notes = new ArrayList<>();
    try {
      ledger.ifPresent(held -> settle(held, plan.get(), pdf, notes));
      refuseTouched(SignatureCheck.of(pdf, look.get()));
      return sign(pdf, new Signatory(plan.get(), request, look.get(), session), ledger, notes);
    } catch (UsageException refused) {
      throw refused.after(notes);
    }
  }

  /** What was cut off before is told first, so that the ledger knows the record as it is. */
  private void settle(LedgerFile ledger, Plan plan, byte[] pdf, List<String> notes) {
    RecordFile.Filed filed = record.filed().orElseThrow();
    notes.addAll(ledger.settle(filed.day(), plan));
    refuseOther(ledger, pdf);
  }

  /** Only the last revision is signed, as the ledger has it. */
  private void refuseOther(LedgerFile ledger, byte[] pdf) {
    RecordFile.Filed filed = record.filed().orElseThrow();
    DayLedger known = new DayLedger(filed.book(), filed.day(), ledger.ledger());
    if (filed.revision() != known.revision()) {
      throw new UsageException(
          filed.path() + " is not of that day's last revision in the ledger, r" + known.revision());
    }
    String hash = SourceFile.of(filed.path(), pdf).sha256();
    if (!known.hash(filed.path()).equals(Optional.of(hash))) {
      throw new UsageException(filed.path() + " is not as the ledger tells; prove says more");
    }
  }

  private void refuseTouched(SignatureCheck seals) {
    if (!seals.isUntouched()) {
      String why = String.join("; ", seals.allFaults());
      throw new UsageException(
          record.name() + " was changed after it was printed, and is not signed: " + why);
    }
  }

  /** The book's plan of today; of a record far from its book, the plan that it carries. */
  private PlanVersions plan(byte[] pdf) {
    Optional<Path> folder = request.book().or(() -> record.filed().map(RecordFile.Filed::book));
    if (folder.isPresent()) {
      return PlanVersions.of(BookFolder.withoutDays(folder.get()));
    }
    EnclosedEvidence.Taken taken = EnclosedEvidence.of(record.name(), pdf);
    return taken
        .enclosed()
        .map(enclosed -> PlanVersions.of(enclosed.book()))
        .orElseGet(() -> new PlanVersions(Optional.empty(), taken.faults()));
  }

  private JobResult sign(
      byte[] pdf, Signatory signatory, Optional<LedgerFile> ledger, List<String> settled) {
    signatory.check(record.name(), pdf);
    SigningKey key = key(signatory);
    Optional<String> server =
        signatory.plan().establishment().timestampUrl().filter(url -> request.stamped());
    Optional<Head> head = ledger.map(LedgerFile::ledger).map(Ledger::head);
    int room = server.isPresent() ? ROOM_WITH_STAMP : ROOM;
    Autograph autograph = signatory.autograph(key.card(), head, room);
    session.progress("signing");
    byte[] signed = Pdf.sign(pdf, autograph, signature(key, server));
    refuseOwnFault(signed);
    put(signed);
    ledger.ifPresent(held -> held.append(List.of(event(pdf, signed, signatory, key))));
    List<String> notes = new ArrayList<>(settled);
    ledger.ifPresent(held -> notes.addAll(held.notes()));
    return told(signatory, key, server.isPresent(), ledger, notes);
  }

  /**
   * @throws UsageException where the key can't be opened, or the plan does not have it as the
   *     person's
   */
  private SigningKey key(Signatory signatory) {
    String initials = signatory.person().initials();
    KeyFolder folder = new KeyFolder(request.keys(), initials);
    byte[] file = Disk.read(folder.key());
    char[] word = passphrase.of(initials, false);
    OpenedKey opened = Signing.open(file, word);
    Arrays.fill(word, '\0');
    SigningKey key =
        opened
            .key()
            .orElseThrow(
                () -> new UsageException(folder.key() + " can't be opened: " + opened.why()));
    refuseUnknown(signatory, key.card());
    return key;
  }

  private static void refuseUnknown(Signatory signatory, CertificateInfo card) {
    String initials = signatory.person().initials();
    Optional<PersonKey> known = signatory.person().key(card.fingerprint());
    if (known.isEmpty()) {
      throw new UsageException(
          "the plan does not have the key "
              + card.fingerprint()
              + " as "
              + initials
              + "'s; key show tells the line to add");
    }
    boolean counts = known.filter(key -> key.isInForce(signatory.time().toLocalDate())).isPresent();
    if (!counts || !card.isInForce(signatory.time().toInstant())) {
      throw new UsageException("the key of " + initials + " does not count today");
    }
  }

  private UnaryOperator<byte[]> signature(SigningKey key, Optional<String> server) {
    return covered -> {
      byte[] seal = Signing.sign(covered, key);
      return server.map(address -> new TimestampClient(address).stamped(seal)).orElse(seal);
    };
  }

  /** What prove would refuse later is not written now. */
  private static void refuseOwnFault(byte[] signed) {
    Look look = Pdf.look(signed).orElseThrow();
    SignatureCheck seals = SignatureCheck.of(signed, look);
    if (!seals.isUntouched()) {
      throw new IllegalStateException("a signature just made: " + seals.allFaults());
    }
  }

  private void put(byte[] signed) {
    Disk.writing(record.path(), () -> Disk.replace(record.path(), signed, record.folderForNew()));
  }

  private Event event(byte[] before, byte[] signed, Signatory signatory, SigningKey key) {
    RecordFile.Filed filed = record.filed().orElseThrow();
    Map<String, String> facts = new TreeMap<>();
    facts.put("role", signatory.role().word());
    facts.put("box", signatory.box());
    facts.put("key", key.card().fingerprint());
    return Event.of(EventType.SIGNED, signatory.time().toInstant(), session.tool())
        .on(filed.day(), filed.revision())
        .about(record.name())
        .by(signatory.person().initials(), signatory.reason())
        .files(
            Map.of(filed.path(), SourceFile.of("", before).sha256()),
            Map.of(filed.path(), SourceFile.of("", signed).sha256()))
        .facts(facts);
  }

  private JobResult told(
      Signatory signatory,
      SigningKey key,
      boolean stamped,
      Optional<LedgerFile> ledger,
      List<String> notes) {
    StringBuilder text = new StringBuilder();
    text.append(record.path()).append(" is signed.\n");
    text.append("    ").append(signatory.person().name()).append(" as ");
    text.append(signatory.role().word()).append(", ").append(signatory.time()).append('\n');
    text.append("    key ").append(key.card().fingerprint()).append('\n');
    text.append(stamped ? "    with a time stamp\n" : "");
    ledger.map(LedgerFile::end).ifPresent(text::append);
    notes.forEach(note -> text.append(note).append('\n'));
    return JobResult.well(text.toString());
  }
}
