package org.flitchbook.pdf;

import java.io.ByteArrayOutputStream;
import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.InputStream;
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
      Destinations destinations = new Destinations();
      List<TaggedPage> pages = new Composer(file, document, archive.root(), destinations).compose();
      archive.finish(pages, destinations);
      archive.enclose(attachments);
      file.save(out, new CompressParameters(OBJECTS_A_STREAM));
      return out.toByteArray();
    } catch (IOException e) {
      throw new UncheckedIOException(
          "the document \"" + document.title() + "\" can't be printed", e);
    }
  }

  /** A file that lies beside this program's classes. */
  static byte[] resource(String name) throws IOException {
    try (InputStream in = Pdf.class.getResourceAsStream(name)) {
      if (in == null) {
        throw new FileNotFoundException(name + " is missing from the program");
      }
      return in.readAllBytes();
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
