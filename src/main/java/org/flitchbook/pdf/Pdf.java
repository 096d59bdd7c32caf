package org.flitchbook.pdf;

import java.io.ByteArrayOutputStream;
import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.util.List;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdfwriter.compress.CompressParameters;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAppearanceStream;
import org.flitchbook.document.Document;
import org.flitchbook.document.Text;
import org.flitchbook.words.Words;

/** Prints documents as PDF. */
public final class Pdf {
  /** Few large object streams: a later signature reads the file several times faster. */
  private static final int OBJECTS_A_STREAM = 5000;

  private Pdf() {}

  /**
   * The document as a PDF file that carries other files, in the order of their names. The same
   * document gives the same bytes, whatever the clock, the locale and the zone of the machine. The
   * fonts are embedded; the fonts of the system are not looked at. Letters that the font can't show
   * are counted, and their script named.
   *
   * @param attachments each with a name of its own
   */
  public static byte[] print(Document document, List<Attachment> attachments) {
    try (PDDocument file = new PDDocument()) {
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      Archive archive = new Archive(file, document);
      new Composer(file, document, archive).compose();
      archive.finish(attachments);
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
    TextLayout text = new TextLayout(file, words);
    PDAppearanceStream panel = new PDAppearanceStream(file);
    panel.setBBox(new PDRectangle(place.getWidth(), place.getHeight()));
    panel.setResources(new PDResources());
    try (OutputStream bytes = panel.getContentStream().createOutputStream(COSName.FLATE_DECODE);
        PDPageContentStream out = new PDPageContentStream(file, panel, bytes)) {
      out.setNonStrokingColor(Color.WHITE.red, Color.WHITE.green, Color.WHITE.blue);
      out.addRect(0, 0, place.getWidth(), place.getHeight());
      out.fill();
      out.setNonStrokingColor(Color.BLACK.red, Color.BLACK.green, Color.BLACK.blue);
      double y = place.getHeight();
      for (int i = 0; i < lines.size(); i++) {
        FontSize size = i == 0 ? FontSize.BODY : FontSize.SMALL;
        Text.Style style = i == 0 ? Text.Style.STRONG : Text.Style.PLAIN;
        for (TextLine line : text.lines(size, style, lines.get(i), place.getWidth())) {
          write(out, text.font(style), line, y - size.baseline());
          y -= size.leading;
        }
      }
    }
    return panel;
  }

  private static void write(PDPageContentStream out, PDFont font, TextLine line, double baseline)
      throws IOException {
    for (TextLine.Piece piece : line.pieces()) {
      out.beginText();
      out.setFont(font, (float) line.size().points);
      out.newLineAtOffset((float) piece.x(), (float) baseline);
      out.showText(piece.text());
      out.endText();
    }
  }
}
