package org.flitchbook.cli;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.ZonedDateTime;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDStream;
import org.apache.pdfbox.pdmodel.common.filespecification.PDComplexFileSpecification;
import org.flitchbook.Wording;
import org.flitchbook.seal.PdfFile;
import org.flitchbook.seal.PdfFile.SignatureRequest;
import org.flitchbook.sign.Signing;
import org.flitchbook.sign.SigningKey;

/** What somebody with a true key and bad intent can do to a record. */
final class Forger {

  private Forger() {}

  /** Something done to a file. */
  interface Deed {
    void to(PDDocument file) throws IOException;
  }

  /** The file with a change saved behind what was there, as a signature is. */
  static byte[] added(byte[] pdf, Deed deed) {
    return saved(pdf, deed, true);
  }

  /** The file rewritten with a change. */
  static byte[] rewritten(byte[] pdf, Deed deed) {
    return saved(pdf, deed, false);
  }

  private static byte[] saved(byte[] pdf, Deed deed, boolean behind) {
    try (PDDocument file = Loader.loadPDF(pdf)) {
      deed.to(file);
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      if (behind) {
        file.saveIncremental(out);
      } else {
        file.save(out);
      }
      return out.toByteArray();
    } catch (IOException refused) {
      throw new UncheckedIOException(refused);
    }
  }

  /** A page with nothing on it in the place of one with something. */
  static void blankPage(PDDocument file) throws IOException {
    PDPage page = file.getPage(1);
    byte[] nothing = "q Q".getBytes(StandardCharsets.US_ASCII);
    page.setContents(new PDStream(file, new ByteArrayInputStream(nothing)));
    page.getCOSObject().setNeedToBeUpdated(true);
  }

  /** Another look of the first signature. */
  static void blankSignature(PDDocument file) throws IOException {
    var widget =
        file.getDocumentCatalog().getAcroForm(null).getField("prepared").getWidgets().get(0);
    COSStream look = widget.getNormalAppearanceStream().getCOSObject();
    try (OutputStream out = look.createOutputStream(COSName.FLATE_DECODE)) {
      out.write("q Q".getBytes(StandardCharsets.US_ASCII));
    }
    look.setNeedToBeUpdated(true);
  }

  /** Replaces text in a file that a record carries. */
  static Deed swapping(String description, String old, String now) {
    return file -> {
      for (PDComplexFileSpecification each :
          file.getDocumentCatalog().getNames().getEmbeddedFiles().getNames().values()) {
        if (each.getFileDescription().equals(description)) {
          swap(each.getEmbeddedFile().getCOSObject(), old, now);
        }
      }
    };
  }

  private static void swap(COSStream content, String old, String now) throws IOException {
    String text = new String(content.createInputStream().readAllBytes(), StandardCharsets.UTF_8);
    if (!text.contains(old)) {
      throw new AssertionError("no " + old + " in " + text);
    }
    byte[] bytes = text.replace(old, now).getBytes(StandardCharsets.UTF_8);
    try (OutputStream out = content.createOutputStream(COSName.FLATE_DECODE)) {
      out.write(bytes);
    }
    content.getCOSDictionary(COSName.PARAMS).setInt(COSName.SIZE, bytes.length);
    content.setNeedToBeUpdated(true);
  }

  /** A true signature, by whoever holds the key, that looks at nothing before it signs. */
  static byte[] signed(byte[] pdf, String field, Path keys, String initials) {
    byte[] file = Tree.bytes(keys.resolve(initials + ".p12"));
    SigningKey key = Signing.open(file, Smokeyard.PASSPHRASE.toCharArray()).key().orElseThrow();
    SignatureRequest autograph =
        new SignatureRequest(
            field,
            List.of("Signed"),
            Wording.ENGLISH,
            key.info().name(),
            "reviewer",
            ZonedDateTime.now(java.time.ZoneOffset.UTC),
            false,
            8192);
    return PdfFile.sign(pdf, autograph, covered -> Signing.sign(covered, key));
  }
}
