package org.flitchbook.signing;

import java.nio.file.Path;
import java.time.ZonedDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.flitchbook.archive.DayLedger;
import org.flitchbook.archive.LedgerFile;
import org.flitchbook.archive.RecordFile;
import org.flitchbook.archive.SignatureCheck;
import org.flitchbook.archive.SignerRole;
import org.flitchbook.book.BookFolder;
import org.flitchbook.book.PlannedBook;
import org.flitchbook.evidence.EnclosedEvidence;
import org.flitchbook.evidence.RecordEvidence;
import org.flitchbook.input.SourceFile;
import org.flitchbook.job.ExitStatus;
import org.flitchbook.job.JobResult;
import org.flitchbook.job.Session;
import org.flitchbook.job.UsageException;
import org.flitchbook.keys.KeyFolder;
import org.flitchbook.keys.Keys.Passphrase;
import org.flitchbook.ledger.Head;
import org.flitchbook.ledger.Ledger;
import org.flitchbook.message.Message;
import org.flitchbook.plan.Plan;
import org.flitchbook.seal.PdfFile;
import org.flitchbook.seal.PdfSignatures;
import org.flitchbook.sign.Signing;
import org.flitchbook.sign.SigningKey;

/**
 * Signs a record: checks that it is as it was printed and that the person may, shows what it says
 * and asks, fills the box, and adds a line to the ledger. First the file is put in place, then its
 * line is written. While the person is asked nobody has to wait: the ledger is held before, to see
 * that the record is the last one, and after, when all of that is looked at again.
 */
public final class RecordSigning {

  private final Session session;
  private final Request request;
  private final Passphrase passphrase;
  private final RecordFile record;
  private final byte[] pdf;
  private final EnclosedEvidence.Taken taken;

  /** What a person should know about what became of the ledger as it was found. */
  private final List<Message> notes = new ArrayList<>();

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
   * @param agreed whether the person signs without being asked
   */
  public record Request(
      Path file,
      String initials,
      Optional<String> role,
      Optional<String> reason,
      Path keys,
      Optional<Path> book,
      boolean stamped,
      boolean agreed) {

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
   * @throws UsageException where the person may not or does not agree, where the record was changed
   *     after it was printed, or where no time stamp can be had
   */
  public static JobResult sign(Session session, Request request, Passphrase passphrase) {
    RecordSigning signing =
        new RecordSigning(session, request, passphrase, RecordFile.of(request.file()));
    try {
      return signing.sign();
    } catch (UsageException refused) {
      throw refused.after(signing.notes);
    }
  }

  private JobResult sign() {
    Optional<PdfSignatures> look = PdfFile.signatures(pdf);
    if (look.isEmpty()) {
      return JobResult.broken(List.of(record.noPdf()));
    }
    PlannedBook book = book();
    return book.plan()
        .map(plan -> sign(plan, look.get()))
        .orElseGet(() -> JobResult.broken(book.faults()));
  }

  private JobResult sign(Plan plan, PdfSignatures look) {
    session.speak(plan.words());
    JobResult settled = holding(ledger -> settle(ledger, plan));
    if (settled.status() != ExitStatus.WELL) {
      return settled;
    }
    SignatureCheck check = SignatureCheck.of(pdf, look);
    refuseTouched(check);
    Signatory signatory = Signatory.of(request, plan, look);
    Shown shown = Shown.of(taken, session.tool());
    new PageCheck(record.name(), shown, session.tool()).refuseOther(pdf, look);
    signatory.refuse(shown, check, look);
    List<Message> lines = signatory.lines(record.name(), shown);
    if (!request.agreed()) {
      Consent.ask(session, lines);
    }
    SigningKey key = key(signatory);
    return holding(
        ledger -> {
          settle(ledger, plan);
          refuseChangedMeanwhile(plan);
          List<Message> said = new ArrayList<>(request.agreed() ? lines : List.of());
          said.addAll(sealing(signatory, shown, key, ledger).into(ledger));
          said.addAll(notes);
          ledger.ifPresent(held -> said.addAll(held.notes()));
          return JobResult.well(session.lines(said));
        });
  }

  private Sealing sealing(
      Signatory signatory, Shown shown, SigningKey key, Optional<LedgerFile> ledger) {
    ZonedDateTime now = now(signatory.plan());
    signatory.refuseUnknown(key.info(), now);
    Optional<Head> head = ledger.map(LedgerFile::ledger).map(Ledger::head);
    Autograph autograph = new Autograph(signatory, shown.review(), now, key.info(), head);
    Optional<String> server =
        signatory.plan().establishment().timestampUrl().filter(url -> request.stamped());
    return new Sealing(session, record, pdf, autograph, key, server);
  }

  /** A job with the ledger of the book that the record lies in; without one elsewhere. */
  private JobResult holding(Function<Optional<LedgerFile>, JobResult> job) {
    return record
        .filed()
        .map(place -> LedgerFile.hold(place.book(), session, l -> job.apply(Optional.of(l))))
        .orElseGet(() -> job.apply(Optional.empty()));
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

  /** What was cut off before gets its lines first, so that the ledger has the record as it is. */
  private JobResult settle(Optional<LedgerFile> ledger, Plan plan) {
    ledger.ifPresent(
        held -> {
          RecordFile.Filed filed = record.filed().orElseThrow();
          notes.addAll(held.settle(filed.day(), plan));
          refuseOther(held.day(filed.day()), filed);
        });
    return JobResult.well("");
  }

  /** While the person was asked, others were free to work. */
  private void refuseChangedMeanwhile(Plan plan) {
    boolean isSamePlan = book().plan().map(Plan::sha256).equals(Optional.of(plan.sha256()));
    if (!Arrays.equals(record.bytes(), pdf) || !isSamePlan) {
      throw new UsageException(
          "signing.changed-meanwhile",
          "{0} or the plan was changed while you were asked; nothing was signed, look again",
          record.name());
    }
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
    if (!known.hash(filed.path()).equals(Optional.of(SourceFile.of("", pdf).sha256()))) {
      throw new UsageException(
          "signing.not-as-listed",
          "{0} is not as the ledger lists it; prove says more",
          filed.path());
    }
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
    signatory.refuseUnknown(key.info(), now(signatory.plan()));
    return key;
  }

  private ZonedDateTime now(Plan plan) {
    return session.now().atZone(plan.establishment().zone()).truncatedTo(ChronoUnit.SECONDS);
  }
}
