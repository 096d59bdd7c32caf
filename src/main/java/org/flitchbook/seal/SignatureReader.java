package org.flitchbook.seal;

import static java.nio.charset.StandardCharsets.US_ASCII;
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
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.interactive.digitalsignature.PDSignature;
import org.apache.pdfbox.pdmodel.interactive.form.PDAcroForm;
import org.apache.pdfbox.pdmodel.interactive.form.PDField;
import org.apache.pdfbox.pdmodel.interactive.form.PDSignatureField;
import org.flitchbook.message.Message;

/**
 * Finds the signatures of a file, and whether it was saved as often as it was signed. What a reader
 * of PDF makes of the file is compared with its bare bytes, so that a signature can't be hidden.
 */
final class SignatureReader {
  private static final byte[] SAVED = "startxref".getBytes(US_ASCII);
  private static final byte[] SIGNED = "/ByteRange".getBytes(US_ASCII);
  private static final byte[] SAVED_END = "%%EOF".getBytes(US_ASCII);

  private final byte[] pdf;
  private final List<String> fields = new ArrayList<>();
  private final List<PdfSignature> found = new ArrayList<>();

  SignatureReader(byte[] pdf) {
    this.pdf = pdf;
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
    return new PdfSignatures(fields, found, printedEnd(pdf), faults());
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
        certifies(signature.getCOSObject()),
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

  private static boolean certifies(COSDictionary signature) {
    return signature.getCOSArray(COSName.getPDFName("Reference")) != null;
  }

  private List<Message> faults() {
    List<Message> faults = new ArrayList<>();
    int saved = count(pdf, SAVED);
    int signed = count(pdf, SIGNED);
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
  private static int printedEnd(byte[] pdf) {
    int end = next(pdf, SAVED_END, 0);
    return end < 0 ? pdf.length : Math.min(pdf.length, end + SAVED_END.length + 1);
  }

  private static int count(byte[] bytes, byte[] word) {
    int count = 0;
    for (int at = next(bytes, word, 0); at >= 0; at = next(bytes, word, at + 1)) {
      count++;
    }
    return count;
  }

  private static int next(byte[] bytes, byte[] word, int from) {
    for (int at = from; at <= bytes.length - word.length; at++) {
      int same = 0;
      while (same < word.length && bytes[at + same] == word[same]) {
        same++;
      }
      if (same == word.length) {
        return at;
      }
    }
    return -1;
  }
}
