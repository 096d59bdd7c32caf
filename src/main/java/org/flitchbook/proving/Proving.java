package org.flitchbook.proving;

import java.nio.charset.StandardCharsets;
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
import org.flitchbook.book.BookFolder;
import org.flitchbook.document.Block;
import org.flitchbook.document.Document;
import org.flitchbook.document.Heading;
import org.flitchbook.document.Paper;
import org.flitchbook.document.Paragraph;
import org.flitchbook.document.Running;
import org.flitchbook.document.Text;
import org.flitchbook.input.Fault;
import org.flitchbook.input.SourceFile;
import org.flitchbook.job.ExitStatus;
import org.flitchbook.job.JobResult;
import org.flitchbook.job.Session;
import org.flitchbook.job.UsageException;
import org.flitchbook.json.Json;
import org.flitchbook.judging.Judging;
import org.flitchbook.ledger.Head;
import org.flitchbook.pdf.Look;
import org.flitchbook.pdf.Pdf;

/** Proves a record or a book, and tells in plain words what is proved and what is not. */
public final class Proving {

  private static final String BEYOND =
      "That what was written down is true, no signature proves: it proves who vouches for it, and"
          + " that nothing was changed since.";

  private final ProveRequest request;
  private final Session session;

  private Proving(Session session, ProveRequest request) {
    this.session = session;
    this.request = request;
  }

  /**
   * Proves a record or a book: signatures, changes, the ledger, and for a record the verdicts
   * judged again from what it carries. Writes nothing.
   *
   * @throws UsageException where there is no such file or folder
   */
  public static JobResult prove(Session session, ProveRequest request) {
    Proving proving = new Proving(session, request);
    return Files.isDirectory(request.what()) ? proving.book() : proving.record();
  }

  private JobResult book() {
    Path folder = BookFolder.of(request.what());
    if (!request.fingerprints().isEmpty()) {
      throw new UsageException("--fingerprint is for one record; a book has its plan");
    }
    session.progress("proving");
    List<Fault> faults = new ArrayList<>();
    TrustedKeys known = TrustedKeys.of(request, Optional.of(folder), faults);
    if (!faults.isEmpty()) {
      return JobResult.broken(faults);
    }
    BookProof proof = new BookProof(folder, known);
    List<Statement> statements = new ArrayList<>(proof.statements());
    statements.add(Statement.open("", BEYOND));
    Map<String, Object> json = json("book", folder.getFileName(), statements);
    json.put("ledger", ledger(proof.head()));
    return answer(folder.toString(), statements, json);
  }

  private static Map<String, Object> ledger(Head head) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("sequence", head.sequence());
    tree.put("hash", head.hash());
    return tree;
  }

  private JobResult record() {
    RecordFile record = RecordFile.of(request.what());
    byte[] pdf = record.bytes();
    Optional<Look> look = Pdf.look(pdf);
    if (look.isEmpty()) {
      return JobResult.broken(List.of(record.noPdf()));
    }
    session.progress("proving");
    List<Fault> faults = new ArrayList<>();
    TrustedKeys known = TrustedKeys.of(request, record.filed().map(RecordFile.Filed::book), faults);
    if (!faults.isEmpty()) {
      return JobResult.broken(faults);
    }
    RecordProof proof = new RecordProof(record.name(), pdf, look.get(), known);
    List<Statement> statements = new ArrayList<>(proof.all(session.tool()));
    record.filed().ifPresent(filed -> statements.add(inLedger(record.name(), filed, pdf)));
    statements.add(Statement.open("", BEYOND));
    Map<String, Object> json = json("record", record.path().getFileName(), statements);
    json.put("signatures", proof.json());
    proof.comparison().ifPresent(found -> json.put("findings", findings(found)));
    return answer(record.path().toString(), statements, json);
  }

  /** Beside its book, whose ledger tells of it. */
  private static Statement inLedger(String name, RecordFile.Filed filed, byte[] pdf) {
    DayLedger known = new DayLedger(filed.book(), filed.day(), LedgerFile.read(filed.book()));
    Optional<String> hash = known.hash(filed.path());
    if (hash.isEmpty()) {
      return Statement.open(name, "The ledger of its book does not tell of it.");
    }
    return hash.get().equals(SourceFile.of(name, pdf).sha256())
        ? Statement.proved(name, "It is the one that the ledger of its book tells of.")
        : Statement.broken(name, "It is not the one that the ledger of its book tells of.");
  }

  private static Map<String, Object> findings(Comparison found) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("compared", found.compared());
    tree.put("differences", found.differences().stream().map(Comparison.Difference::json).toList());
    return tree;
  }

  private static Map<String, Object> json(String proves, Path name, List<Statement> statements) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("flitchbook", "1");
    tree.put("proves", proves);
    tree.put("name", String.valueOf(name));
    tree.put("untouched", isUntouched(statements));
    tree.put("statements", statements.stream().map(Statement::json).toList());
    return tree;
  }

  private static boolean isUntouched(List<Statement> statements) {
    return statements.stream().noneMatch(Statement::isBroken);
  }

  private JobResult answer(String about, List<Statement> statements, Map<String, Object> json) {
    boolean untouched = isUntouched(statements);
    return new JobResult(
        statements.stream().anyMatch(Statement::isAmiss) ? ExitStatus.AMISS : ExitStatus.WELL,
        Judging.printed(document(about, statements, untouched)),
        new String(Json.write(json), StandardCharsets.UTF_8),
        List.of());
  }

  private Document document(String about, List<Statement> statements, boolean untouched) {
    String name =
        request.what().getFileName() == null ? "" : request.what().getFileName().toString();
    List<Block> blocks = new ArrayList<>();
    for (Statement.Standing standing : Statement.Standing.values()) {
      List<String> lines =
          statements.stream()
              .filter(each -> each.standing() == standing)
              .map(each -> each.line(name))
              .toList();
      if (!lines.isEmpty()) {
        blocks.add(new Heading(2, standing.heading));
        blocks.add(new Paragraph(Text.of(Text.printable(String.join("\n", lines)))));
      }
    }
    return new Document(
        about,
        untouched ? "No sign of a change." : "NOT AS IT WAS.",
        BookFolder.wording(),
        about,
        session.now(),
        Paper.A4,
        new Running("", "", "", ""),
        blocks);
  }
}
