package org.flitchbook.proving;

import static org.flitchbook.message.Message.count;
import static org.flitchbook.message.Message.say;
import static org.flitchbook.proving.Statement.Standing.BROKEN;
import static org.flitchbook.proving.Statement.Standing.LACKS;
import static org.flitchbook.proving.Statement.Standing.OPEN;
import static org.flitchbook.proving.Statement.Standing.PROVED;

import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.flitchbook.archive.LedgerFile;
import org.flitchbook.archive.RecordFolder;
import org.flitchbook.archive.RecordList;
import org.flitchbook.archive.SignatureCheck;
import org.flitchbook.archive.SignerRole;
import org.flitchbook.book.Book;
import org.flitchbook.book.BookFolder;
import org.flitchbook.disk.Disk;
import org.flitchbook.input.Fault;
import org.flitchbook.input.SourceFile;
import org.flitchbook.ledger.Head;
import org.flitchbook.ledger.Ledger;
import org.flitchbook.ledger.LedgerLine;
import org.flitchbook.message.Message;
import org.flitchbook.seal.PdfFile;
import org.flitchbook.seal.PdfSignatures;

/** What a book proves: its ledger, each file against it, and the signatures in its records. */
final class BookProof {

  private final Path book;
  private final Ledger ledger;
  private final TrustedKeys trusted;
  private final RecordList list;
  private final Map<String, Listed> inputs = new TreeMap<>();
  private final Map<String, String> tools = new TreeMap<>();
  private final Map<SignerRole, List<String>> unsigned = new EnumMap<>(SignerRole.class);
  private final List<Statement> statements = new ArrayList<>();
  private final List<SignatureCheck.Each> stating = new ArrayList<>();

  /**
   * A file as the ledger lists it.
   *
   * @param line the number of the last line that does
   */
  private record Listed(String hash, long line) {}

  BookProof(Path book, TrustedKeys trusted) {
    this.book = book;
    this.ledger = LedgerFile.read(book);
    this.list = RecordList.of(ledger);
    this.trusted = trusted;
    for (LedgerLine line : ledger.lines()) {
      list(inputs, line, line.event().inputs());
    }
    BookFolder.toolTemplates().forEach(file -> tools.put(file.name(), file.sha256()));
  }

  private static void list(Map<String, Listed> known, LedgerLine line, Map<String, String> files) {
    files.forEach((path, hash) -> known.put(path, new Listed(hash, line.sequence())));
  }

  List<Statement> statements() {
    proveLedger();
    statements.addAll(
        new RecordsProof(book, list, below(RecordFolder.of(book).records())).statements());
    proveInputs();
    proveSignatures();
    statements.addAll(new KeysOfHeads(book, list).unknown(trusted.people(), stating));
    return statements;
  }

  Head head() {
    return ledger.head();
  }

  private void add(Statement.Standing standing, String about, Message message) {
    statements.add(new Statement(standing, about, message));
  }

  private void proveLedger() {
    for (Fault fault : ledger.faults()) {
      Message broken = say("proving.ledger.broken", "The ledger is broken: {0}.", fault.message());
      add(BROKEN, Ledger.FILE, broken);
    }
    ledger
        .torn()
        .map(fault -> say("proving.ledger.torn", "The ledger is torn: {0}.", fault.message()))
        .ifPresent(torn -> add(BROKEN, Ledger.FILE, torn));
    if (ledger.lines().isEmpty()) {
      add(OPEN, Ledger.FILE, say("proving.ledger.empty", "The ledger has no line yet."));
    } else if (ledger.faults().isEmpty()) {
      Message whole =
          count(
              "proving.ledger.whole",
              ledger.lines().size(),
              "The ledger's only line is whole, up to hash {1}.",
              "The ledger's {0} lines follow from each other, up to hash {1}.",
              head().hash());
      add(PROVED, Ledger.FILE, whole);
    }
  }

  private List<String> below(Path folder) {
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    return Disk.reading(
        folder,
        () -> {
          try (Stream<Path> all = Files.walk(folder)) {
            return all.filter(each -> Files.isRegularFile(each, LinkOption.NOFOLLOW_LINKS))
                .map(each -> book.relativize(each).toString().replace('\\', '/'))
                .sorted()
                .toList();
          }
        });
  }

  /** What was written down, against the last close that read it. */
  private void proveInputs() {
    int before = statements.size();
    inputs.forEach(this::proveInput);
    Optional<LocalDate> last =
        ledger.lines().stream()
            .flatMap(line -> line.event().day().stream())
            .max(LocalDate::compareTo);
    Disk.list(book).stream()
        .filter(Files::isDirectory)
        .forEach(folder -> Disk.day(folder).ifPresent(day -> proveDay(folder, day, last)));
    if (statements.stream().skip(before).noneMatch(each -> each.is(BROKEN)) && !inputs.isEmpty()) {
      add(
          PROVED,
          "",
          say("proving.inputs", "What was written down is as it was when the days were closed."));
    }
  }

  private void proveDay(Path folder, LocalDate day, Optional<LocalDate> last) {
    boolean isLate = last.filter(closed -> !day.isAfter(closed)).isPresent();
    Message late = say("proving.input.late", "It was added after its day was closed.");
    Message early = say("proving.input.early", "Its day is not closed yet.");
    below(folder).stream()
        .filter(path -> !inputs.containsKey(path) && !isHidden(path))
        .forEach(path -> add(isLate ? BROKEN : OPEN, path, isLate ? late : early));
  }

  private static boolean isHidden(String path) {
    return path.substring(path.lastIndexOf('/') + 1).startsWith(".");
  }

  /** The plan goes on by itself; a template that the book does not have is the program's own. */
  private void proveInput(String path, Listed listed) {
    Optional<String> file = BookFolder.file(book, path).map(SourceFile::sha256);
    Optional<String> now = file.or(() -> Optional.ofNullable(tools.get(path)));
    if (list.files().containsKey(path) || now.filter(listed.hash()::equals).isPresent()) {
      return;
    }
    long line = listed.line();
    if (Book.dayOf(path).isPresent()) {
      add(
          BROKEN,
          path,
          file.isEmpty()
              ? say(
                  "proving.input.gone",
                  "It is gone since line {0} of the ledger, with no close.",
                  line)
              : say(
                  "proving.input.changed",
                  "It was changed since line {0} of the ledger, with no close.",
                  line));
    } else {
      add(
          OPEN,
          path,
          now.isEmpty()
              ? say("proving.plan.gone", "It is gone since line {0} of the ledger.", line)
              : say("proving.plan.changed", "It was changed since line {0} of the ledger.", line));
    }
  }

  private void proveSignatures() {
    long signatures =
        list.files().keySet().stream()
            .filter(path -> path.endsWith(".pdf"))
            .flatMap(path -> BookFolder.file(book, path).stream())
            .mapToLong(this::proveSignatures)
            .sum();
    if (signatures == 0) {
      add(OPEN, RecordFolder.NAME, say("proving.none-signed", "No record of the book is signed."));
    }
    unsigned.forEach((role, paths) -> add(LACKS, RecordFolder.NAME, unsigned(role, paths)));
  }

  private static Message unsigned(SignerRole role, List<String> paths) {
    return count(
        "proving.unsigned-records",
        paths.size(),
        "One record must be signed by a {1}, and has no such signature: {2}.",
        "{0} records must be signed by a {1}, and have no such signature; the first is {2}.",
        role.message(),
        paths.get(0));
  }

  private boolean isOfLastRevision(String path) {
    return list.last(path)
        .map(state -> state.line().event())
        .filter(
            event ->
                list.lastClose(event.day().orElseThrow())
                    .filter(close -> close.event().revision() == event.revision())
                    .isPresent())
        .isPresent();
  }

  /** Gives the number of the signatures in a record. */
  private long proveSignatures(SourceFile file) {
    byte[] pdf = file.bytes();
    Optional<PdfSignatures> look = PdfFile.signatures(pdf);
    if (look.isEmpty()) {
      add(BROKEN, file.name(), say("proving.no-pdf", "It can't be read as PDF."));
      return 0;
    }
    RecordProof proof = new RecordProof(file.name(), pdf, look.get(), trusted);
    List<Statement> found = proof.signatures();
    if (!proof.signed().isEmpty() || found.stream().anyMatch(each -> each.is(BROKEN))) {
      statements.addAll(found);
    }
    if (isOfLastRevision(file.name())) {
      proof
          .missing()
          .forEach(role -> unsigned.computeIfAbsent(role, r -> new ArrayList<>()).add(file.name()));
    }
    List<RecordList.State> states = list.files().getOrDefault(file.name(), List.of());
    statements.addAll(
        new SignatureLines(file, states, look.get(), proof.signed(), trusted).statements());
    states.stream()
        .limit(proof.signed().isEmpty() ? 0 : 1)
        .map(state -> state.line().event())
        .flatMap(
            close ->
                new Superseded(list)
                    .statements(close.day().orElseThrow(), close.revision(), file.name()).stream())
        .forEach(statements::add);
    proof.signed().forEach(each -> proveHead(file.name(), each));
    return proof.signed().size();
  }

  private void proveHead(String path, SignatureCheck.Each each) {
    Optional<Head> head = each.ledger();
    if (each.isValid() && head.filter(stated -> !isInLedger(stated)).isPresent()) {
      Message rewritten =
          say(
              "proving.ledger.rewritten",
              "The signature in \"{0}\" states line {1} of the ledger with hash {2}, and the"
                  + " ledger does not have it: lines were taken out, or written again.",
              each.signed().field(),
              head.get().sequence(),
              head.get().hash());
      add(BROKEN, path, rewritten);
    } else if (each.isValid() && head.isPresent()) {
      stating.add(each);
    }
  }

  private boolean isInLedger(Head head) {
    return head.equals(Head.NONE)
        || ledger.lines().stream().map(LedgerLine::head).anyMatch(head::equals);
  }
}
