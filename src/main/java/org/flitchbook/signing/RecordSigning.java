package org.flitchbook.signing;

import static org.flitchbook.message.Message.say;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import org.flitchbook.archive.DayLedger;
import org.flitchbook.archive.LedgerFile;
import org.flitchbook.archive.RecordFile;
import org.flitchbook.archive.RecordList;
import org.flitchbook.archive.SignatureCheck;
import org.flitchbook.archive.SignerRole;
import org.flitchbook.book.BookFolder;
import org.flitchbook.book.PlannedBook;
import org.flitchbook.disk.Disk;
import org.flitchbook.evidence.EnclosedEvidence;
import org.flitchbook.evidence.RecordEvidence;
import org.flitchbook.input.Fault;
import org.flitchbook.input.SourceFile;
import org.flitchbook.job.JobResult;
import org.flitchbook.job.Session;
import org.flitchbook.job.UsageException;
import org.flitchbook.judging.Judged;
import org.flitchbook.keys.KeyFolder;
import org.flitchbook.keys.Keys.Passphrase;
import org.flitchbook.ledger.Event;
import org.flitchbook.ledger.EventType;
import org.flitchbook.ledger.Head;
import org.flitchbook.ledger.Ledger;
import org.flitchbook.message.Listing;
import org.flitchbook.message.Message;
import org.flitchbook.plan.Plan;
import org.flitchbook.record.DayJudged;
import org.flitchbook.seal.PdfFile;
import org.flitchbook.seal.PdfFile.SignatureRequest;
import org.flitchbook.seal.PdfSignatures;
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

  private final Session session;
  private final Request request;
  private final Passphrase passphrase;
  private final RecordFile record;
  private final byte[] pdf;
  private final EnclosedEvidence.Taken taken;

  /**
   * How a record is to be signed.
   *
   * @param file the record, as PDF
   * @param initials who signs
   * @param role "maker" or "reviewer"; empty: the one that is open to the person
   * @param reason what the person adds; empty where nothing
   * @param keys the folder of the keys
   * @param book whose plan knows the person; empty: the one that the record lies in, else the plan
   *     that the record carries
   * @param stamped whether a time stamp is wanted where the plan names a server
   */
  public record Request(
      Path file,
      String initials,
      Optional<String> role,
      Optional<String> reason,
      Path keys,
      Optional<Path> book,
      boolean stamped) {

    /** It must stand in its box with all the rest. */
    private static final int LONGEST_REASON = 60;

    public Request {
      role.ifPresent(SignerRole::named);
      reason
          .filter(Request::isUnfit)
          .ifPresent(
              text -> {
                throw new UsageException(
                    "signing.long-reason",
                    "a reason stands on one line of at most {0} characters",
                    LONGEST_REASON);
              });
    }

    private static boolean isUnfit(String reason) {
      return reason.length() > LONGEST_REASON || reason.chars().anyMatch(Character::isISOControl);
    }
  }

  private RecordSigning(
      Session session, Request request, Passphrase passphrase, RecordFile record) {
    this.session = session;
    this.request = request;
    this.passphrase = passphrase;
    this.record = record;
    this.pdf = record.bytes();
    this.taken = EnclosedEvidence.of(record.name(), pdf);
  }

  /**
   * Signs a record, and adds a line to the ledger of the book that it lies in.
   *
   * @throws UsageException where the person may not, where the record was changed after it was
   *     printed, or where no time stamp can be had
   */
  public static JobResult sign(Session session, Request request, Passphrase passphrase) {
    RecordFile record = RecordFile.of(request.file());
    Function<Optional<LedgerFile>, JobResult> signing =
        ledger -> new RecordSigning(session, request, passphrase, record).sign(ledger);
    return record
        .filed()
        .map(place -> LedgerFile.hold(place.book(), session, l -> signing.apply(Optional.of(l))))
        .orElseGet(() -> signing.apply(Optional.empty()));
  }

  private JobResult sign(Optional<LedgerFile> ledger) {
    Optional<PdfSignatures> look = PdfFile.signatures(pdf);
    if (look.isEmpty()) {
      return JobResult.broken(List.of(record.noPdf()));
    }
    PlannedBook book = book();
    return book.plan()
        .map(plan -> sign(plan, look.get(), ledger))
        .orElseGet(() -> JobResult.broken(book.faults()));
  }

  /** The book of today; of a record far from its book, what it carries of it. */
  private PlannedBook book() {
    return request
        .book()
        .or(() -> record.filed().map(RecordFile.Filed::book))
        .map(folder -> BookFolder.readPlan(session, folder))
        .or(() -> taken.enclosed().map(each -> PlannedBook.of(each.book(session.tool()))))
        .orElseGet(
            () ->
                new PlannedBook(
                    RecordEvidence.book(record.name(), List.of()),
                    Optional.empty(),
                    taken.faults()));
  }

  private JobResult sign(Plan plan, PdfSignatures look, Optional<LedgerFile> ledger) {
    session.speak(plan.words());
    List<Message> notes = new ArrayList<>();
    try {
      ledger.ifPresent(held -> settle(held, plan, notes));
      refuseTouched(SignatureCheck.of(pdf, look));
      refuseOtherPages(look);
      return sign(Signatory.of(session, request, plan, look), ledger, notes);
    } catch (UsageException refused) {
      throw refused.after(notes);
    }
  }

  /** What was cut off before gets its lines first, so that the ledger has the record as it is. */
  private void settle(LedgerFile ledger, Plan plan, List<Message> notes) {
    RecordFile.Filed filed = record.filed().orElseThrow();
    notes.addAll(ledger.settle(filed.day(), plan));
    refuseOther(ledger.day(filed.day()), filed);
  }

  /** Only the last revision is signed, as the ledger has it. */
  private void refuseOther(DayLedger known, RecordFile.Filed filed) {
    if (filed.revision() != known.revision()) {
      throw new UsageException(
          "signing.not-last",
          "{0} is not of that day's last revision in the ledger, r{1}",
          filed.path(),
          known.revision());
    }
    if (!known.hash(filed.path()).equals(Optional.of(hash(pdf)))) {
      throw new UsageException(
          "signing.not-as-listed",
          "{0} is not as the ledger lists it; prove says more",
          filed.path());
    }
  }

  private static String hash(byte[] bytes) {
    return SourceFile.of("", bytes).sha256();
  }

  private void refuseTouched(SignatureCheck check) {
    if (!check.isUntouched()) {
      throw new UsageException(
          "signing.touched",
          "{0} was changed after it was printed, and is not signed: {1}",
          record.name(),
          check.allFaults());
    }
  }

  /**
   * Nobody vouches for pages that do not follow from what the record carries. Where this version
   * can't tell, byte for byte, only a further signature is made: the first one vouches for them.
   */
  private void refuseOtherPages(PdfSignatures look) {
    EnclosedEvidence enclosed = taken.enclosed().orElseThrow(() -> unreadable(taken.faults()));
    boolean isFirst = look.signatures().isEmpty();
    if (enclosed.madeBy().equals(session.tool())) {
      refuseOther(enclosed, look, isFirst);
    } else if (isFirst) {
      throw new UsageException(
          "signing.other-version",
          "{0} was printed by version {1} of the program, and version {2} can't compare its"
              + " pages: close the day again and sign that, or sign with version {1}",
          record.name(),
          enclosed.madeBy(),
          session.tool());
    }
  }

  private void refuseOther(EnclosedEvidence enclosed, PdfSignatures look, boolean isFirst) {
    Judged again = enclosed.judgedAgain(session.tool());
    DayJudged day = again.day().orElseThrow(() -> unreadable(again.faults()));
    Optional<PdfFile.Likeness> likeness = enclosed.likeness(pdf, look, day, session.tool());
    boolean isSame =
        likeness.filter(found -> found instanceof PdfFile.Likeness.Same).isPresent()
            || (!isFirst
                && likeness.filter(l -> l instanceof PdfFile.Likeness.Repacked).isPresent());
    if (!isSame) {
      throw new UsageException(
          "signing.other-pages",
          "{0} is not what its own evidence prints, and is not signed; prove says more",
          record.name());
    }
  }

  private UsageException unreadable(List<Fault> faults) {
    return new UsageException(
        "signing.unreadable",
        "what {0} carries can't be judged again, and it is not signed: {1}",
        record.name(),
        Listing.semicolons(faults.stream().map(Fault::message).toList()));
  }

  private JobResult sign(Signatory signatory, Optional<LedgerFile> ledger, List<Message> settled) {
    signatory.check(taken, session.tool());
    SigningKey key = key(signatory);
    Optional<String> server =
        signatory.plan().establishment().timestampUrl().filter(url -> request.stamped());
    Optional<Head> head = ledger.map(LedgerFile::ledger).map(Ledger::head);
    SignatureRequest autograph =
        signatory.autograph(key.info(), head, server.isPresent() ? ROOM_WITH_STAMP : ROOM);
    session.progress(say("signing.progress", "signing"));
    byte[] signed = PdfFile.sign(pdf, autograph, signature(key, server));
    refuseOwnFault(signed);
    Disk.writing(record.path(), () -> Disk.replace(record.path(), signed, record.folderForNew()));
    ledger.ifPresent(held -> held.append(List.of(event(signed, signatory, key))));
    List<Message> lines = lines(signatory, key, server.isPresent());
    ledger.ifPresent(held -> lines.add(held.end()));
    lines.addAll(settled);
    ledger.ifPresent(held -> lines.addAll(held.notes()));
    return JobResult.well(session.lines(lines));
  }

  /**
   * The person's key.
   *
   * @throws UsageException where it can't be opened, or the plan does not have it as the person's
   */
  private SigningKey key(Signatory signatory) {
    String initials = signatory.person().initials();
    KeyFolder folder = new KeyFolder(request.keys(), initials);
    Path file = folder.key();
    byte[] closed = folder.closed(session);
    char[] word = passphrase.of(session, initials, false);
    Signing.OpenedKey opened = Signing.open(closed, word);
    Arrays.fill(word, '\0');
    if (opened.key().isEmpty()) {
      Message why = opened.why().orElseThrow();
      throw new UsageException("signing.unopened", "{0} can't be opened: {1}", file, why);
    }
    SigningKey key = opened.key().get();
    signatory.refuseUnknown(key.info());
    return key;
  }

  private static UnaryOperator<byte[]> signature(SigningKey key, Optional<String> server) {
    return covered -> {
      byte[] signature = Signing.sign(covered, key);
      return server
          .map(address -> new TimestampClient(address).stamped(signature))
          .orElse(signature);
    };
  }

  /** What prove would refuse later is not written now. */
  private static void refuseOwnFault(byte[] signed) {
    SignatureCheck check = SignatureCheck.of(signed, PdfFile.signatures(signed).orElseThrow());
    if (!check.isUntouched()) {
      throw new IllegalStateException("a signature just made: " + check.allFaults());
    }
  }

  private Event event(byte[] signed, Signatory signatory, SigningKey key) {
    RecordFile.Filed filed = record.filed().orElseThrow();
    return Event.of(EventType.SIGNED, signatory.time().toInstant(), session.tool())
        .on(filed.day(), filed.revision())
        .about(record.name())
        .by(signatory.person().initials(), signatory.reason())
        .files(Map.of(filed.path(), hash(pdf)), Map.of(filed.path(), hash(signed)))
        .facts(
            Map.of(
                "role",
                signatory.role().word(),
                RecordList.BOX,
                signatory.box(),
                RecordList.KEY,
                key.info().fingerprint()));
  }

  private List<Message> lines(Signatory signatory, SigningKey key, boolean isStamped) {
    String name = signatory.person().name();
    Message role = signatory.role().message();
    List<Message> lines = new ArrayList<>();
    lines.add(say("signing.signed", "{0} is signed.", record.path()));
    lines.add(say("signing.signed-by", "    {0} as {1}, {2}", name, role, signatory.time()));
    lines.add(say("signing.signed-with", "    key {0}", key.info().fingerprint()));
    if (isStamped) {
      lines.add(say("signing.stamped", "    with a time stamp"));
    }
    return lines;
  }
}
