package org.flitchbook.seal;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static org.flitchbook.message.Message.say;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Calendar;
import java.util.Comparator;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSInteger;
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
    try (PDDocument file = PdfFile.load(pdf)) {
      PDAcroForm form = PdfFile.call(() -> file.getDocumentCatalog().getAcroForm(null));
      if (form != null) {
        for (PDField field : PdfFile.call(form::getFields)) {
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
      PDSignature signature = PdfFile.call(signing::getSignature);
      if (signature != null) {
        found.add(read(name, signature));
      }
    }
  }

  private PdfSignature read(String field, PDSignature signature) throws IOException {
    ByteRange range = new ByteRange(pdf, signature.getCOSObject().getCOSArray(COSName.BYTERANGE));
    Calendar stated = PdfFile.call(signature::getSignDate);
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
    int end = found.isEmpty() ? printedEnd() : found.get(found.size() - 1).end();
    boolean isTold = found.isEmpty() && saved != 1;
    if (end != pdf.length && !isTold) {
      faults.add(
          found.isEmpty()
              ? say("seal.file.behind", "{0} bytes stand behind its end", pdf.length - end)
              : say(
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

  /**
   * The place of a signature in the file's bytes: a hexadecimal text between two angle brackets,
   * and nothing else. Readers of PDF skip what they don't understand there; here each byte counts.
   */
  private static final class ByteRange {
    private static final int RANGES = 4;

    /** ASN.1's tag of a sequence, and the bit that says that a length has several octets. */
    private static final int SEQUENCE = 0x30;

    private static final int LONG = 0x80;
    private static final int MOST_LENGTH_OCTETS = 3;

    private final byte[] pdf;
    final List<Message> faults = new ArrayList<>();
    private int from;
    private int to;
    int end;
    ByteBuffer seal = ByteBuffer.allocate(0);

    ByteRange(byte[] pdf, COSArray range) {
      this.pdf = pdf;
      if (!isSound(range)) {
        faults.add(say("seal.signature.range", "it does not say rightly which bytes it covers"));
        return;
      }
      from = range.getInt(1);
      to = range.getInt(2);
      end = to + range.getInt(3);
      readSeal();
    }

    private boolean isSound(COSArray range) {
      if (range == null || range.size() != RANGES) {
        return false;
      }
      for (COSBase each : range) {
        if (!(each instanceof COSInteger number)
            || number.longValue() < 0
            || number.longValue() > pdf.length) {
          return false;
        }
      }
      return range.getInt(0) == 0
          && range.getInt(1) < range.getInt(2)
          && (long) range.getInt(2) + range.getInt(3) <= pdf.length;
    }

    /** Upper-case digits only: this program writes no others. */
    private void readSeal() {
      String place = new String(pdf, from, to - from, ISO_8859_1);
      if (place.length() % 2 != 0 || !place.matches("<[0-9A-F]*>")) {
        faults.add(
            say(
                "seal.signature.digits",
                "its place holds something else than the digits of a signature"));
        return;
      }
      byte[] bytes = HexFormat.of().parseHex(place, 1, place.length() - 1);
      int length = length(bytes);
      seal = ByteBuffer.wrap(bytes, 0, length).slice();
      if (IntStream.range(length, bytes.length).anyMatch(i -> bytes[i] != 0)) {
        faults.add(say("seal.signature.behind", "something stands behind it in its place"));
      }
    }

    /** The length of the structure at the begin, as its first octets say; 0 where they say none. */
    private static int length(byte[] bytes) {
      if (bytes.length < 2 + MOST_LENGTH_OCTETS || bytes[0] != SEQUENCE) {
        return 0;
      }
      int octets = bytes[1] & ~LONG & 0xff;
      if ((bytes[1] & LONG) == 0) {
        return Math.min(2 + octets, bytes.length);
      }
      int length = 0;
      for (int i = 0; i < Math.min(octets, MOST_LENGTH_OCTETS); i++) {
        length = (length << 8) | (bytes[2 + i] & 0xff);
      }
      return octets > MOST_LENGTH_OCTETS ? 0 : Math.min(2 + octets + length, bytes.length);
    }

    ByteBuffer before() {
      return ByteBuffer.wrap(pdf, 0, from).slice();
    }

    ByteBuffer after() {
      return ByteBuffer.wrap(pdf, to, end - to).slice();
    }
  }
}
