package org.flitchbook.pdf;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import org.apache.pdfbox.pdfwriter.compress.CompressParameters;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.flitchbook.document.Document;

/** Prints documents as PDF. */
public final class Pdf {
  /** Few large object streams: a later signature reads the file several times faster. */
  private static final int OBJECTS_A_STREAM = 5000;

  private Pdf() {}

  /**
   * The document as a PDF file. The same document gives the same bytes, whatever the clock, the
   * locale and the zone of the machine. The fonts are embedded; the fonts of the system are not
   * looked at. A character that the font can't show is printed as the replacement character.
   */
  public static byte[] print(Document document) {
    try (PDDocument file = new PDDocument()) {
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      Archive archive = new Archive(file, document);
      archive.finish(new Composer(file, document, archive.root()).compose());
      file.save(out, new CompressParameters(OBJECTS_A_STREAM));
      return out.toByteArray();
    } catch (IOException e) {
      throw new UncheckedIOException(
          "the document \"" + document.title() + "\" can't be printed", e);
    }
  }
}
