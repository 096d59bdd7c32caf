package org.flitchbook.pdf;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import org.apache.pdfbox.pdfwriter.compress.CompressParameters;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAppearanceStream;
import org.flitchbook.document.Document;
import org.flitchbook.words.Words;

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
   * What a signed field shows, over the lines for ink: the lines given, the first one strong; long
   * ones are broken.
   *
   * @param place of the field on its page
   */
  public static PDAppearanceStream appearance(
      PDDocument file, PDRectangle place, List<String> lines, Words words) throws IOException {
    return new SignatureAppearance(file, words).draw(place, lines);
  }
}
