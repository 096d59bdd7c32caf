package org.flitchbook.proving;

import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.flitchbook.archive.LedgerFile;
import org.flitchbook.archive.RecordFolder;
import org.flitchbook.archive.SignatureCheck;
import org.flitchbook.archive.SigningReason;
import org.flitchbook.book.Book;
import org.flitchbook.book.BookFolder;
import org.flitchbook.disk.Disk;
import org.flitchbook.input.SourceFile;
import org.flitchbook.ledger.Event;
import org.flitchbook.ledger.Head;
import org.flitchbook.ledger.Ledger;
import org.flitchbook.ledger.LedgerLine;
import org.flitchbook.pdf.Look;
import org.flitchbook.pdf.Pdf;

/** What a book proves: its ledger, each file against it, and the signatures in its records. */
final class BookProof {

  private static final String RECORDS = RecordFolder.NAME;

  private final Path book;
  private final Ledger ledger;
  private final TrustedKeys trusted;
  private final Map<String, String> outputs = new TreeMap<>();
  private final Map<String, String> inputs = new TreeMap<>();
  private final Map<String, Long> lines = new TreeMap<>();
  private final Map<String, String> tools = new TreeMap<>();
  private final List<Statement> statements = new ArrayList<>();
  private int signatures;

  BookProof(Path book, TrustedKeys trusted) {
    this.book = book;
    this.ledger = LedgerFile.read(book);
    this.trusted = trusted;
    for (LedgerLine line : ledger.lines()) {
      note(outputs, line, line.event().outputs());
      note(inputs, line, line.event().inputs());
    }
    BookFolder.toolTemplates().forEach(file -> tools.put(file.name(), file.sha256()));
  }

  private void note(Map<String, String> told, LedgerLine line, Map<String, String> files) {
    files.forEach(
        (path, hash) -> {
          told.put(path, hash);
          lines.put(path, line.sequence());
        });
  }

  List<Statement> statements() {
    tellLedger();
    tellRecords();
    tellStrangers();
    tellInputs();
    tellSignatures();
    return statements;
  }

  Head head() {
    return ledger.head();
  }

  private void tellLedger() {
    ledger.faults().forEach(fault -> broken(Ledger.FILE, "The ledger is broken: " + fault + "."));
    ledger.torn().ifPresent(fault -> broken(Ledger.FILE, "The ledger is torn: " + fault + "."));
    if (ledger.lines().isEmpty()) {
      open(Ledger.FILE, "The ledger tells nothing yet.");
    } else if (ledger.faults().isEmpty()) {
      int lines = ledger.lines().size();
      String told =
          lines == 1
              ? "The ledger's only line is whole"
              : "The ledger's " + lines + " lines hang together";
      proved(Ledger.FILE, told + ", up to hash " + head().hash() + ".");
    }
  }

  private void proved(String about, String words) {
    statements.add(Statement.proved(about, words));
  }

  private void open(String about, String words) {
    statements.add(Statement.open(about, words));
  }

  private void broken(String about, String words) {
    statements.add(Statement.broken(about, words));
  }

  /** Each record as the last line has it that tells of it. */
  private void tellRecords() {
    int before = statements.size();
    outputs.forEach(
        (path, hash) -> {
          Optional<SourceFile> file = BookFolder.file(book, path);
          String line = ", which line " + lines.get(path) + " of the ledger tells of";
          if (file.isEmpty()) {
            broken(path, "It is missing" + line + ".");
          } else if (!file.get().sha256().equals(hash)) {
            broken(path, "It is not the one" + line + ".");
          }
        });
    if (statements.size() == before && !outputs.isEmpty()) {
      proved(RECORDS, "All " + outputs.size() + " files of the records are as the ledger tells.");
    }
  }

  /** Files among the records that no line tells of. */
  private void tellStrangers() {
    for (String path : below(book.resolve(RECORDS))) {
      if (!outputs.containsKey(path)) {
        tellStranger(path);
      }
    }
  }

  private void tellStranger(String path) {
    if (path.contains("/" + Disk.HIDDEN)) {
      open(path, "A close or a signature was cut off and left it; the next one clears it away.");
    } else if (path.contains("/" + LedgerFile.ASIDE)) {
      open(path, "It was put aside by a close that could not prove it.");
    } else {
      broken(path, "It lies among the records, and the ledger does not tell of it.");
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
  private void tellInputs() {
    int before = statements.size();
    inputs.forEach((path, hash) -> tellInput(path, hash));
    Optional<LocalDate> last =
        ledger.lines().stream()
            .map(LedgerLine::event)
            .map(Event::day)
            .flatMap(Optional::stream)
            .max(LocalDate::compareTo);
    for (Path day : days()) {
      for (String path : below(day)) {
        Optional<LocalDate> date = Book.dayOf(path);
        boolean late =
            last.isPresent() && date.filter(each -> !each.isAfter(last.get())).isPresent();
        if (!inputs.containsKey(path) && !isHidden(path)) {
          tellUnread(path, late);
        }
      }
    }
    if (statements.stream().skip(before).noneMatch(Statement::isBroken) && !inputs.isEmpty()) {
      proved("", "What was written down is as it was when the days were closed.");
    }
  }

  private static boolean isHidden(String path) {
    return path.substring(path.lastIndexOf('/') + 1).startsWith(".");
  }

  private void tellUnread(String path, boolean late) {
    if (late) {
      broken(path, "It was added after its day was closed.");
    } else {
      open(path, "Its day is not closed yet.");
    }
  }

  /** The plan goes on by itself; a template that the book does not have is the program's own. */
  private void tellInput(String path, String hash) {
    if (outputs.containsKey(path)) {
      return;
    }
    Optional<SourceFile> file = BookFolder.file(book, path);
    Optional<String> now =
        file.map(SourceFile::sha256).or(() -> Optional.ofNullable(tools.get(path)));
    boolean same = now.filter(hash::equals).isPresent();
    String when = " since line " + lines.get(path) + " of the ledger";
    if (!same && Book.dayOf(path).isEmpty()) {
      open(path, (now.isEmpty() ? "It is gone" : "It was changed") + when + ".");
    } else if (!same) {
      broken(path, (file.isEmpty() ? "It is gone" : "It was changed") + when + ", with no close.");
    }
  }

  private List<Path> days() {
    return Disk.list(book).stream()
        .filter(each -> Files.isDirectory(each) && Disk.day(each).isPresent())
        .toList();
  }

  private void tellSignatures() {
    outputs.keySet().stream()
        .filter(path -> path.endsWith(".pdf"))
        .flatMap(path -> BookFolder.file(book, path).stream())
        .forEach(this::tellSignatures);
    if (signatures == 0) {
      open(RECORDS, "No record of the book is signed.");
    }
  }

  private void tellSignatures(SourceFile file) {
    byte[] pdf = file.bytes();
    Optional<Look> look = Pdf.look(pdf);
    if (look.isEmpty()) {
      broken(file.name(), "It can't be read as PDF.");
      return;
    }
    RecordProof proof = new RecordProof(file.name(), pdf, look.get(), trusted);
    List<Statement> told = proof.signatures();
    if (!look.get().signatures().isEmpty() || told.stream().anyMatch(Statement::isBroken)) {
      statements.addAll(told);
    }
    signatures += proof.signed().size();
    proof.signed().forEach(each -> tellHead(file.name(), each));
  }

  private void tellHead(String path, SignatureCheck.Each each) {
    SigningReason.of(each.signed().reason())
        .ledger()
        .filter(head -> each.isValid() && !isInLedger(head))
        .ifPresent(
            head ->
                broken(
                    path,
                    "The signature in \""
                        + each.signed().field()
                        + "\" states line "
                        + head.sequence()
                        + " of the ledger with hash "
                        + head.hash()
                        + ", and the ledger does not have it: lines were taken out, or written"
                        + " anew."));
  }

  private boolean isInLedger(Head head) {
    return head.equals(Head.NONE)
        || ledger.lines().stream().map(LedgerLine::head).anyMatch(head::equals);
  }
}
