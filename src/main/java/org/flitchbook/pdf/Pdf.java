package org.flitchbook.pdf;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdfwriter.compress.CompressParameters;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.flitchbook.document.Document;

/** Prints documents as PDF. */
public final class Pdf {
  /** Few large object streams: a later signature reads the file several times faster. */
  private static final int OBJECTS_A_STREAM = 5000;

  private Pdf() {}

  /**
   * The document as a PDF file. The same document gives the same bytes, whatever the clock, the
   * locale and the zone of the machine. The fonts are embedded; the fonts of the system are not
   * looked at. Letters that the font can't show are counted, and their script named.
   */
  public static byte[] print(Document document) {
    return print(document, List.of());
  }

  /**
   * The document as a PDF file that carries other files, in the order of their names.
   *
   * @param attachments each with a name of its own
   */
  public static byte[] print(Document document, List<Attachment> attachments) {
    try (PDDocument file = new PDDocument()) {
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      Archive archive = new Archive(file, document);
      Anchors anchors = new Anchors();
      List<Sheet> sheets = new Composer(file, document, archive.root(), anchors).compose();
      archive.finish(sheets, anchors);
      archive.enclose(attachments);
      file.save(out, new CompressParameters(OBJECTS_A_STREAM));
      return out.toByteArray();
    } catch (IOException e) {
      throw new UncheckedIOException(
          "the document \"" + document.title() + "\" can't be printed", e);
    }
  }

  /**
   * The files that a print carries, whoever made it. It is refused where it is no PDF file, where
   * it is encrypted, where an attachment is packed otherwise than {@link #print} packs, is larger
   * than 64 MB unpacked, makes more than 512 MB with the others or has not the size that it states,
   * and where two have one name. Whether the file was changed is not looked at.
   */
  public static Opened attachments(byte[] pdf) {
    try (PDDocument file = Loader.loadPDF(pdf)) {
      if (file.isEncrypted()) {
        return new Opened.Refused("an encrypted file", "a file that anybody can read");
      }
      return new Opened.Carrying(List.copyOf(new Disclosure().of(file).values()));
    } catch (Disclosure.Refusal refusal) {
      return new Opened.Refused(refusal.found, refusal.expected);
    } catch (IOException unreadable) {
      return new Opened.Refused(
          "what can't be read as PDF (" + unreadable.getMessage() + ")", "a whole PDF file");
    }
  }

  /**
   * Signs a print: fills a field in an increment and keeps every byte before it.
   *
   * @param seal makes the signature of the bytes given, no longer than the room for it
   * @throws IllegalArgumentException where the print has no such field, or it is signed already
   */
  public static byte[] sign(byte[] pdf, Autograph autograph, UnaryOperator<byte[]> seal) {
    try {
      return new SignatureWriter(autograph).sign(pdf, seal);
    } catch (IOException unreadable) {
      throw new UncheckedIOException("this can't be signed", unreadable);
    }
  }

  /**
   * The fields and signatures of a file, whoever made it; empty where it can't be read as PDF.
   * Whether a signature is true is not looked at.
   */
  public static Optional<Look> look(byte[] pdf) {
    try {
      return Optional.of(new SignatureReader(pdf).look());
    } catch (IOException | RuntimeException broken) {
      // PDFBox tells broken files by exceptions of many kinds.
      return Optional.empty();
    }
  }

  /**
   * What was changed in a file after it was printed beyond the signing of its fields, in words.
   *
   * @param look at that very file
   */
  public static List<String> changes(byte[] pdf, Look look) {
    try {
      return new Revisions(pdf, look).changes();
    } catch (IOException | RuntimeException broken) {
      return List.of("an earlier state of it can't be read");
    }
  }

  /** The words on the pages of a file, without any white space; empty where it can't be read. */
  public static Optional<String> words(byte[] pdf) {
    try (PDDocument file = Loader.loadPDF(pdf)) {
      return Optional.of(new PDFTextStripper().getText(file).replaceAll("\\s+", ""));
    } catch (IOException | RuntimeException broken) {
      return Optional.empty();
    }
  }
}
