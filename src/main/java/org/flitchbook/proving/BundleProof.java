package org.flitchbook.proving;

import static org.flitchbook.message.Message.say;
import static org.flitchbook.proving.Statement.Standing.BROKEN;
import static org.flitchbook.proving.Statement.Standing.OPEN;
import static org.flitchbook.proving.Statement.Standing.PROVED;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.flitchbook.archive.Bundle;
import org.flitchbook.evidence.EnclosedEvidence;
import org.flitchbook.input.SourceFile;
import org.flitchbook.message.Message;
import org.flitchbook.seal.PdfFile;
import org.flitchbook.seal.PdfSignatures;

/** What a bundle proves that stands alone: its manifest, its records, and what they carry. */
record BundleProof(SourceFile file, TrustedKeys trusted, String tool) {

  /** How every ZIP begins that holds a file. */
  private static final byte[] ZIP = {'P', 'K', 3, 4};

  static boolean isZip(SourceFile file) {
    byte[] bytes = file.bytes();
    return bytes.length > ZIP.length && Arrays.equals(Arrays.copyOf(bytes, ZIP.length), ZIP);
  }

  List<Statement> statements() {
    return Bundle.read(file.bytes())
        .filter(bundle -> !bundle.records().isEmpty())
        .map(this::statements)
        .orElseGet(
            () ->
                List.of(
                    statement(
                        BROKEN,
                        say(
                            "proving.bundle.broken",
                            "It is no bundle of records, or not what its own manifest says."))));
  }

  private Statement statement(Statement.Standing standing, Message message) {
    return new Statement(standing, file.name(), message);
  }

  private List<Statement> statements(Bundle bundle) {
    List<Statement> between = new DayFiles("", bundle.records(), Optional.of(bundle)).statements();
    Stream<Statement> whole =
        between.isEmpty()
            ? Stream.of(
                statement(
                    PROVED,
                    say(
                        "proving.bundle.whole",
                        "Its {0} records are what its manifest says; each JSON is what its PDF"
                            + " carries, and all that the PDFs carry is among its evidence.",
                        bundle.records().size())))
            : between.stream();
    Stream<Statement> records =
        bundle.records().values().stream()
            .filter(each -> each.name().endsWith(".pdf"))
            .flatMap(this::record);
    Statement own =
        statement(
            OPEN,
            say(
                "proving.bundle.alone",
                "Its manifest is its own: anyone who changed a file could write it again. The"
                    + " ledger of the book lists the hash of the bundle, {0}.",
                file.sha256()));
    return Stream.of(whole, records, Stream.of(own)).flatMap(each -> each).toList();
  }

  private Stream<Statement> record(SourceFile pdf) {
    Optional<PdfSignatures> look = PdfFile.signatures(pdf.bytes());
    if (look.isEmpty()) {
      Message broken = say("proving.no-pdf", "It can't be read as PDF.");
      return Stream.of(new Statement(BROKEN, pdf.name(), broken));
    }
    EnclosedEvidence.Taken taken = EnclosedEvidence.of(pdf.name(), pdf.bytes());
    return new RecordProof(pdf.name(), pdf.bytes(), look.get(), trusted).all(taken, tool).stream();
  }
}
