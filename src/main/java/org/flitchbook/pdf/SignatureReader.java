package org.flitchbook.pdf;

import static java.nio.charset.StandardCharsets.US_ASCII;

import java.io.IOException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Calendar;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.interactive.digitalsignature.PDSignature;
import org.apache.pdfbox.pdmodel.interactive.form.PDAcroForm;
import org.apache.pdfbox.pdmodel.interactive.form.PDField;
import org.apache.pdfbox.pdmodel.interactive.form.PDSignatureField;

/**
 * Finds the signatures of a file, and whether it was saved as often as it was signed. What a reader
 * of PDF makes of the file is held against its bare bytes, so that a signature can't be hidden.
 */
final class SignatureReader {
  private static final byte[] SAVED = "startxref".getBytes(US_ASCII);
  private static final byte[] SIGNED = "/ByteRange".getBytes(US_ASCII);
  private static final byte[] SAVED_END = "%%EOF".getBytes(US_ASCII);

  private final byte[] pdf;
  private final List<String> fields = new ArrayList<>();
  private final List<Signed> found = new ArrayList<>();

  SignatureReader(byte[] pdf) {
    this.pdf = pdf;
  }

  Look look() throws IOException {
    try (PDDocument file = Loader.loadPDF(pdf)) {
      PDAcroForm form = file.getDocumentCatalog().getAcroForm(null);
      if (form != null) {
        form.getFields().forEach(this::add);
      }
    }
    found.sort(Comparator.comparingInt(Signed::end));
    return new Look(fields, found, printedEnd(pdf), faults());
  }

  private void add(PDField field) {
    if (field instanceof PDSignatureField signing) {
      fields.add(signing.getPartialName());
      PDSignature signature = signing.getSignature();
      if (signature != null) {
        SignatureGap gap =
            new SignatureGap(pdf, signature.getCOSObject().getCOSArray(COSName.BYTERANGE));
        found.add(read(signing.getPartialName(), signature, gap));
      }
    }
  }

  private static Signed read(String field, PDSignature signature, SignatureGap gap) {
    return new Signed(
        field,
        Optional.ofNullable(signature.getName()).orElse(""),
        Optional.ofNullable(signature.getReason()).orElse(""),
        Optional.ofNullable(signature.getSignDate()).map(SignatureReader::time),
        certifies(signature.getCOSObject()),
        gap.seal(),
        gap.before(),
        gap.after(),
        gap.end(),
        gap.faults());
  }

  private static OffsetDateTime time(Calendar stated) {
    Instant instant = stated.toInstant();
    int offset = stated.getTimeZone().getOffset(instant.toEpochMilli()) / 1000;
    return instant.atOffset(ZoneOffset.ofTotalSeconds(offset));
  }

  private static boolean certifies(COSDictionary signature) {
    return signature.getCOSArray(COSName.getPDFName("Reference")) != null;
  }

  private List<String> faults() {
    List<String> faults = new ArrayList<>();
    int saved = count(pdf, SAVED);
    int signed = count(pdf, SIGNED);
    if (signed != found.size()) {
      faults.add("its bytes hold " + signed + " signatures, and its fields show " + found.size());
    }
    if (saved != signed + 1) {
      faults.add("it was saved " + saved + " times, and signed " + signed + " times");
    }
    int end = found.isEmpty() ? pdf.length : found.get(found.size() - 1).end();
    if (end != pdf.length) {
      faults.add((pdf.length - end) + " bytes were added behind the last signature");
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
