package org.flitchbook.seal;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static org.flitchbook.message.Message.say;

import java.io.IOException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Calendar;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.interactive.digitalsignature.PDSignature;
import org.apache.pdfbox.pdmodel.interactive.form.PDAcroForm;
import org.apache.pdfbox.pdmodel.interactive.form.PDField;
import org.apache.pdfbox.pdmodel.interactive.form.PDSignatureField;
import org.flitchbook.message.Message;
import org.flitchbook.seal.PdfSignatures.PdfSignature;

/**
 * Finds the signatures of a file, and whether it was saved as often as it was signed. What a reader
 * of PDF makes of the file is compared with its bare bytes, so that a signature can't be hidden.
 */
final class SignatureReader {
  private static final String SAVED_END = "%%EOF";

  private final byte[] pdf;

  /** Each byte as a character. */
  private final String bare;

  private final List<String> fields = new ArrayList<>();
  private final List<PdfSignature> found = new ArrayList<>();

  SignatureReader(byte[] pdf) {
    this.pdf = pdf;
    this.bare = new String(pdf, ISO_8859_1);
  }

  PdfSignatures read() throws IOException {
    try (PDDocument file = PdfBox.load(pdf)) {
      PDAcroForm form = PdfBox.call(() -> file.getDocumentCatalog().getAcroForm(null));
      if (form != null) {
        for (PDField field : PdfBox.call(form::getFields)) {
          add(field);
        }
      }
    }
    found.sort(Comparator.comparingInt(PdfSignature::end));
    return new PdfSignatures(fields, found, printedEnd(), faults());
  }

  private void add(PDField field) throws IOException {
    if (field instanceof PDSignatureField signing) {
      String name = String.valueOf(signing.getPartialName());
      fields.add(name);
      PDSignature signature = PdfBox.call(signing::getSignature);
      if (signature != null) {
        found.add(read(name, signature));
      }
    }
  }

  private PdfSignature read(String field, PDSignature signature) throws IOException {
    ByteRange range = new ByteRange(pdf, signature.getCOSObject().getCOSArray(COSName.BYTERANGE));
    Calendar stated = PdfBox.call(signature::getSignDate);
    return new PdfSignature(
        field,
        Optional.ofNullable(signature.getName()).orElse(""),
        Optional.ofNullable(signature.getReason()).orElse(""),
        Optional.ofNullable(stated).map(SignatureReader::time),
        signature.getCOSObject().getCOSArray(COSName.getPDFName("Reference")) != null,
        range.seal,
        range.before(),
        range.after(),
        range.end,
        range.faults);
  }

  /** PDFBox keeps the offset within those that clocks have. */
  private static OffsetDateTime time(Calendar stated) {
    Instant instant = stated.toInstant();
    int offset = stated.getTimeZone().getOffset(instant.toEpochMilli()) / 1000;
    return instant.atOffset(ZoneOffset.ofTotalSeconds(offset));
  }

  private List<Message> faults() {
    List<Message> faults = new ArrayList<>();
    int saved = count("startxref");
    int signed = count("/ByteRange");
    if (signed != found.size()) {
      faults.add(
          say(
              "seal.file.hidden",
              "its bytes hold {0} signatures, and its fields show {1}",
              signed,
              found.size()));
    }
    if (saved != signed + 1) {
      faults.add(
          say("seal.file.saved", "it was saved {0} times, and signed {1} times", saved, signed));
    }
    int end = found.isEmpty() ? pdf.length : found.get(found.size() - 1).end();
    if (end != pdf.length) {
      faults.add(
          say(
              "seal.file.added",
              "{0} bytes were added behind the last signature",
              pdf.length - end));
    }
    return faults;
  }

  /** Where the file ended when it was printed, before anybody signed. */
  private int printedEnd() {
    int end = bare.indexOf(SAVED_END);
    return end < 0 ? pdf.length : Math.min(pdf.length, end + SAVED_END.length() + 1);
  }

  private int count(String word) {
    int count = 0;
    for (int at = bare.indexOf(word); at >= 0; at = bare.indexOf(word, at + 1)) {
      count++;
    }
    return count;
  }
}
