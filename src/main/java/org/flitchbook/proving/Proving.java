package org.flitchbook.proving;

import static org.flitchbook.message.Message.say;
import static org.flitchbook.proving.Statement.Standing.BROKEN;
import static org.flitchbook.proving.Statement.Standing.DIFFERS;
import static org.flitchbook.proving.Statement.Standing.LACKS;
import static org.flitchbook.proving.Statement.Standing.OPEN;
import static org.flitchbook.proving.Statement.Standing.PROVED;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.flitchbook.archive.DayLedger;
import org.flitchbook.archive.LedgerFile;
import org.flitchbook.archive.RecordFile;
import org.flitchbook.archive.RecordList;
import org.flitchbook.archive.SignerRole;
import org.flitchbook.book.BookFolder;
import org.flitchbook.book.PlannedBook;
import org.flitchbook.disk.Disk;
import org.flitchbook.document.Block;
import org.flitchbook.document.Document;
import org.flitchbook.document.Text;
import org.flitchbook.evidence.EnclosedEvidence;
import org.flitchbook.input.SourceFile;
import org.flitchbook.job.ExitStatus;
import org.flitchbook.job.JobResult;
import org.flitchbook.job.Session;
import org.flitchbook.job.UsageException;
import org.flitchbook.json.Json;
import org.flitchbook.judging.Judging;
import org.flitchbook.ledger.Ledger;
import org.flitchbook.message.Message;
import org.flitchbook.plan.Plan;
import org.flitchbook.seal.PdfFile;
import org.flitchbook.seal.PdfSignatures;
import org.flitchbook.words.Words;

/** Proves records and books, and says in plain words what is proved and what is not. */
public final class Proving {

  private static final Message BEYOND =
      say(
          "proving.beyond",
          "That what was written down is true, no signature proves: it proves who vouches for it,"
              + " and that nothing was changed since.");

  private static final Message PROGRESS = say("proving.progress", "proving");

  private final Session session;
  private final Optional<Path> plan;
  private final List<String> fingerprints;
  private final List<SignerRole> signers;
  private final List<Witness> witnesses;
  private Words words = Words.ENGLISH;

  /**
   * How something is to be proved.
   *
   * @param plan the plan, or the folder of the book, whose keys count; empty: those of the book
   *     that the record lies in
   * @param fingerprints of keys that must have signed a record; in hexadecimal
   * @param signers the roles in which each record must be signed, "maker" or "reviewer", beside
   *     those that the plan names
   * @param heads of a book's ledger that were kept elsewhere: each the number and the first digits
   *     of a line's hash, or the path of a picture of the code that holds them
   */
  public record Request(
      Optional<Path> plan, List<String> fingerprints, List<String> signers, List<String> heads) {
    public Request {
      fingerprints = List.copyOf(fingerprints);
      signers = List.copyOf(signers);
      heads = List.copyOf(heads);
    }
  }

  private Proving(Session session, Request request) {
    this.session = session;
    this.plan = request.plan();
    this.fingerprints = request.fingerprints().stream().map(TrustedKeys::digits).toList();
    this.signers = request.signers().stream().map(SignerRole::named).toList();
    this.witnesses = request.heads().stream().map(Witness::of).toList();
  }

  /**
   * Proves a record or a book: signatures, changes, the ledger, and for a record the verdicts
   * judged again from what it carries. Writes nothing.
   *
   * @param what a record, as PDF, a bundle of them, as ZIP, or a book's folder
   * @throws UsageException where there is no such file or folder, or no such fingerprint, role or
   *     head
   */
  public static JobResult prove(Session session, Path what, Request request) {
    Proving proving = new Proving(session, request);
    if (Files.isDirectory(what)) {
      return proving.book(what);
    }
    RecordFile record = RecordFile.of(what);
    SourceFile file = SourceFile.of(record.name(), record.bytes());
    return BundleProof.isZip(file) ? proving.bundle(record, file) : proving.record(record);
  }

  private JobResult bundle(RecordFile bundle, SourceFile file) {
    session.progress(PROGRESS);
    TrustedKeys trusted = trusted(bundle);
    if (!trusted.faults().isEmpty()) {
      return JobResult.broken(trusted.faults());
    }
    List<Statement> statements =
        new ArrayList<>(new BundleProof(file, trusted, session.tool()).statements());
    bundle
        .filed()
        .ifPresent(filed -> statements.add(inLedger(filed, file.bytes()).about(file.name())));
    statements.add(new Statement(OPEN, "", BEYOND));
    return result(bundle.path(), statements, json("bundle", bundle.name(), statements));
  }

  private TrustedKeys trusted(RecordFile record) {
    return TrustedKeys.of(
        plan.or(() -> record.filed().map(RecordFile.Filed::book)), fingerprints, signers);
  }

  private JobResult book(Path where) {
    if (!fingerprints.isEmpty()) {
      throw new UsageException(
          "proving.one-record", "--fingerprint is for one record; a book has its plan");
    }
    PlannedBook planned = BookFolder.read(session, where);
    Path folder = planned.book().folder();
    speak(planned);
    session.progress(PROGRESS);
    TrustedKeys trusted = TrustedKeys.of(Optional.of(plan.orElse(folder)), fingerprints, signers);
    if (!trusted.faults().isEmpty()) {
      return JobResult.broken(trusted.faults());
    }
    BookProof proof = new BookProof(folder, trusted);
    List<Statement> statements = new ArrayList<>(proof.statements());
    Ledger ledger = LedgerFile.read(folder);
    witnesses.forEach(each -> statements.add(each.in(ledger)));
    statements.addAll(BookDays.statements(planned));
    statements.add(new Statement(OPEN, "", BEYOND));
    Map<String, Object> head = new LinkedHashMap<>();
    head.put("sequence", proof.head().sequence());
    head.put("hash", proof.head().hash());
    Map<String, Object> json = json("book", Disk.name(folder), statements);
    json.put("ledger", head);
    return result(folder, statements, json);
  }

  private void speak(PlannedBook planned) {
    words = planned.plan().map(Plan::words).orElse(words);
    session.speak(words);
  }

  private JobResult record(RecordFile record) {
    if (!witnesses.isEmpty()) {
      throw new UsageException("proving.one-book", "--head is for a book, whose ledger it is of");
    }
    byte[] pdf = record.bytes();
    EnclosedEvidence.Taken taken = EnclosedEvidence.of(record.name(), pdf);
    taken
        .enclosed()
        .map(enclosed -> PlannedBook.of(enclosed.book(session.tool())))
        .ifPresent(this::speak);
    Optional<PdfSignatures> look = PdfFile.signatures(pdf);
    if (look.isEmpty()) {
      return JobResult.broken(List.of(record.noPdf()));
    }
    session.progress(PROGRESS);
    TrustedKeys trusted = trusted(record);
    if (!trusted.faults().isEmpty()) {
      return JobResult.broken(trusted.faults());
    }
    RecordProof proof = new RecordProof(record.name(), pdf, look.get(), trusted);
    List<Statement> statements = new ArrayList<>(proof.all(taken, session.tool()));
    record.filed().ifPresent(filed -> statements.addAll(inBook(filed, pdf, record.name())));
    statements.add(new Statement(OPEN, "", BEYOND));
    Map<String, Object> json = json("record", record.name(), statements);
    json.put("signatures", proof.json(session));
    proof.comparison().ifPresent(found -> json.put("findings", findings(found)));
    return result(record.path(), statements, json);
  }

  private static List<Statement> inBook(RecordFile.Filed filed, byte[] pdf, String name) {
    RecordList list = RecordList.of(LedgerFile.read(filed.book()));
    List<Statement> statements = new ArrayList<>(List.of(inLedger(filed, pdf).about(name)));
    new Superseded(list)
        .statements(filed.day(), filed.revision(), filed.path())
        .forEach(each -> statements.add(each.about(name)));
    return statements;
  }

  /** Beside its book, whose ledger lists it. */
  private static Statement inLedger(RecordFile.Filed filed, byte[] pdf) {
    DayLedger known = new DayLedger(filed.book(), filed.day(), LedgerFile.read(filed.book()));
    Optional<String> hash = known.hash(filed.path());
    if (hash.isEmpty()) {
      return new Statement(OPEN, "proving.unlisted", "The ledger of its book does not list it.");
    }
    return hash.get().equals(SourceFile.of("", pdf).sha256())
        ? new Statement(
            PROVED, "proving.listed", "It is the one that the ledger of its book lists.")
        : new Statement(
            BROKEN, "proving.other-listed", "It is not the one that the ledger of its book lists.");
  }

  private Map<String, Object> findings(Comparison found) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("compared", found.compared());
    tree.put("differences", found.differences().stream().map(each -> each.json(session)).toList());
    return tree;
  }

  private Map<String, Object> json(String proves, String name, List<Statement> statements) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("flitchbook", "1");
    tree.put("proves", proves);
    tree.put("name", name);
    tree.put("untouched", isUntouched(statements));
    tree.put("statements", statements.stream().map(each -> each.json(session)).toList());
    return tree;
  }

  private static boolean isUntouched(List<Statement> statements) {
    return statements.stream().noneMatch(each -> each.is(BROKEN));
  }

  private JobResult result(Path about, List<Statement> statements, Map<String, Object> json) {
    boolean isAmiss =
        statements.stream().anyMatch(each -> each.is(BROKEN) || each.is(LACKS) || each.is(DIFFERS));
    return JobResult.of(
        isAmiss ? ExitStatus.AMISS : ExitStatus.WELL, text(about, statements), Json.write(json));
  }

  private static Message answer(List<Statement> statements) {
    if (!isUntouched(statements)) {
      return say("proving.touched", "NOT AS IT WAS.");
    }
    if (statements.stream().anyMatch(each -> each.is(LACKS))) {
      return say("proving.incomplete", "NOT COMPLETE. No sign of a change.");
    }
    return statements.stream().anyMatch(Statement::isOfPagesNotCompared)
        ? say("proving.not-compared", "No sign of a change, but its pages were not compared.")
        : say("proving.untouched", "No sign of a change.");
  }

  private String text(Path about, List<Statement> statements) {
    List<Block> blocks = new ArrayList<>();
    for (Statement.Standing standing : Statement.Standing.values()) {
      List<String> lines =
          statements.stream()
              .filter(each -> each.is(standing))
              .map(each -> each.line(Disk.name(about), session))
              .toList();
      if (!lines.isEmpty()) {
        blocks.add(new Block.Heading(2, session.say(standing.heading)));
        blocks.add(new Block.Paragraph(Text.of(Text.printable(String.join("\n", lines)))));
      }
    }
    return Judging.printed(
        new Document(
            about.toString(),
            session.say(answer(statements)),
            words,
            about.toString(),
            session.now(),
            Document.Paper.A4,
            new Document.Running("", "", "", ""),
            Optional.empty(),
            blocks));
  }
}
