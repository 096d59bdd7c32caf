package org.flitchbook.desk;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.flitchbook.document.Block;
import org.flitchbook.document.Document;
import org.flitchbook.document.Text;
import org.flitchbook.input.Fault;
import org.flitchbook.input.SourceFile;
import org.flitchbook.json.Json;
import org.flitchbook.ledger.Head;
import org.flitchbook.seal.PdfFile;
import org.flitchbook.seal.PdfSignatures;
import org.flitchbook.words.Words;

/** Proves a record or a book, and tells in plain words what is proved and what is not. */
final class Proving {

  private static final String BEYOND =
      "That what was written down is true, no signature proves: it proves who vouches for it, and"
          + " that nothing was changed since.";

  private final ProveOrder order;
  private final Caller caller;

  Proving(ProveOrder order, Caller caller) {
    this.order = order;
    this.caller = caller;
  }

  Answer prove() {
    return Files.isDirectory(order.what()) ? book() : record();
  }

  private Answer book() {
    Path folder = Shelf.bookOf(order.what());
    if (!order.fingerprints().isEmpty()) {
      throw new Misuse("--fingerprint is for one record; a book has its plan");
    }
    caller.progress().accept("proving");
    List<Fault> faults = new ArrayList<>();
    Known known = Known.of(order, Optional.of(folder), faults);
    if (!faults.isEmpty()) {
      return Answer.broken(faults);
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

  private Answer record() {
    RecordPlace place = RecordPlace.of(order.what());
    byte[] pdf = place.bytes();
    Optional<PdfSignatures> look = PdfFile.signatures(pdf);
    if (look.isEmpty()) {
      return Answer.broken(List.of(Signer.noPdf(place.name())));
    }
    caller.progress().accept("proving");
    List<Fault> faults = new ArrayList<>();
    Known known = Known.of(order, place.shelf().map(RecordPlace.Filed::book), faults);
    if (!faults.isEmpty()) {
      return Answer.broken(faults);
    }
    RecordProof proof = new RecordProof(place.name(), pdf, look.get(), known);
    List<Statement> statements = new ArrayList<>(proof.all(caller.tool()));
    place.shelf().ifPresent(filed -> statements.add(inLedger(place.name(), filed, pdf)));
    statements.add(Statement.open("", BEYOND));
    Map<String, Object> json = json("record", place.file().getFileName(), statements);
    json.put("signatures", proof.json());
    proof.comparison().ifPresent(found -> json.put("findings", findings(found)));
    return answer(place.file().toString(), statements, json);
  }

  /** Beside its book, whose ledger tells of it. */
  private static Statement inLedger(String name, RecordPlace.Filed filed, byte[] pdf) {
    Told told = new Told(filed.book(), filed.day(), LedgerFile.read(filed.book()));
    Optional<String> hash = told.hash(filed.path());
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

  private Answer answer(String about, List<Statement> statements, Map<String, Object> json) {
    boolean untouched = isUntouched(statements);
    return new Answer(
        untouched ? Status.WELL : Status.AMISS,
        document(about, statements, untouched).toText(Desk.WIDTH).replace('\u00a0', ' '),
        new String(Json.write(json), StandardCharsets.UTF_8),
        List.of(),
        List.of());
  }

  private Document document(String about, List<Statement> statements, boolean untouched) {
    String name = order.what().getFileName() == null ? "" : order.what().getFileName().toString();
    List<Block> blocks = new ArrayList<>();
    for (Statement.Standing standing : Statement.Standing.values()) {
      List<String> lines =
          statements.stream()
              .filter(each -> each.standing() == standing)
              .map(each -> each.line(name))
              .toList();
      if (!lines.isEmpty()) {
        blocks.add(new Block.Heading(2, standing.heading));
        blocks.add(new Block.Paragraph(Text.of(Text.printable(String.join("\n", lines)))));
      }
    }
    return new Document(
        about,
        untouched ? "No sign of a change." : "NOT AS IT WAS.",
        Words.ENGLISH,
        about,
        caller.now(),
        Document.Paper.A4,
        new Document.Running("", "", "", ""),
        blocks);
  }
}
