package org.flitchbook.proving;

import static org.flitchbook.message.Message.say;
import static org.flitchbook.proving.Statement.Standing.BROKEN;
import static org.flitchbook.proving.Statement.Standing.OPEN;
import static org.flitchbook.proving.Statement.Standing.PROVED;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.flitchbook.archive.Bundle;
import org.flitchbook.archive.LedgerFile;
import org.flitchbook.archive.RecordFolder;
import org.flitchbook.archive.RecordList;
import org.flitchbook.book.BookFolder;
import org.flitchbook.disk.Disk;
import org.flitchbook.input.SourceFile;
import org.flitchbook.ledger.Ledger;
import org.flitchbook.ledger.LedgerLine;
import org.flitchbook.message.Message;

/**
 * The files of the records of a book as its ledger lists them, as each close states them, and what
 * lies among them.
 *
 * @param below the files below the folder of the records, by their paths in the book
 */
record RecordsProof(Path book, RecordList list, List<String> below) {

  List<Statement> statements() {
    List<Statement> broken =
        Stream.of(
                list.breaches().stream().map(RecordsProof::breach),
                list.files().keySet().stream().flatMap(path -> file(path).stream()),
                list.closes().stream().flatMap(line -> close(line).statements().stream()))
            .flatMap(each -> each)
            .toList();
    Stream<Statement> whole =
        broken.isEmpty() && !list.files().isEmpty()
            ? Stream.of(
                new Statement(
                    PROVED,
                    RecordFolder.NAME,
                    say(
                        "proving.records",
                        "All {0} files of the records are as the ledger lists them.",
                        list.files().size())))
            : Stream.empty();
    Stream<Statement> strangers =
        below.stream().filter(path -> !list.files().containsKey(path)).map(RecordsProof::stranger);
    return Stream.of(broken.stream(), whole, strangers).flatMap(each -> each).toList();
  }

  private static Statement breach(RecordList.Breach breach) {
    return new Statement(
        BROKEN,
        Ledger.FILE,
        say(
            "proving.ledger.breach",
            "Line {0} does not count: {1}.",
            breach.line(),
            breach.claim()));
  }

  private Optional<Statement> file(String path) {
    RecordList.State state = list.last(path).orElseThrow();
    Optional<String> hash = BookFolder.file(book, path).map(SourceFile::sha256);
    long line = state.line().sequence();
    if (hash.filter(state.hash()::equals).isPresent()) {
      return Optional.empty();
    }
    Message missing =
        say("proving.record.missing", "It is missing, and line {0} of the ledger lists it.", line);
    Message other =
        say("proving.record.other", "It is not the one that line {0} of the ledger lists.", line);
    return Optional.of(new Statement(BROKEN, path, hash.isEmpty() ? missing : other));
  }

  private CloseProof close(LedgerLine line) {
    SortedMap<String, SourceFile> files = new TreeMap<>();
    for (String path : line.event().outputs().keySet()) {
      BookFolder.file(book, path).ifPresent(file -> files.put(file.baseName(), file));
    }
    Optional<Bundle> bundle =
        Optional.ofNullable(files.get(Bundle.FILE)).flatMap(zip -> Bundle.read(zip.bytes()));
    return new CloseProof(line, files, bundle);
  }

  /** A file among the records that no line lists. */
  private static Statement stranger(String path) {
    if (path.contains("/" + Disk.HIDDEN)) {
      return new Statement(
          OPEN,
          path,
          say(
              "proving.record.cut-off",
              "A close or a signature was cut off and left it; the next one clears it away."));
    }
    if (path.contains("/" + LedgerFile.ASIDE)) {
      return new Statement(
          OPEN,
          path,
          say("proving.record.aside", "It was put aside by a close that could not prove it."));
    }
    return new Statement(
        BROKEN,
        path,
        say(
            "proving.record.unlisted",
            "It lies among the records, and the ledger does not list it."));
  }
}
