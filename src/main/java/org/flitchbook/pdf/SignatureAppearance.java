package org.flitchbook.pdf;

import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAppearanceStream;
import org.flitchbook.document.Text;
import org.flitchbook.words.Words;

/** Draws what a signed field shows, over the lines for ink. */
final class SignatureAppearance {
  private final PDDocument file;
  private final Fonts fonts;
  private final TextLayout text;

  SignatureAppearance(PDDocument file, Words words) throws IOException {
    this.file = file;
    this.fonts = new Fonts(file);
    this.text = new TextLayout(fonts, words);
  }

  PDAppearanceStream draw(PDRectangle place, List<String> lines) throws IOException {
    PDAppearanceStream panel = new PDAppearanceStream(file);
    panel.setBBox(new PDRectangle(place.getWidth(), place.getHeight()));
    panel.setResources(new PDResources());
    try (OutputStream bytes = panel.getContentStream().createOutputStream(COSName.FLATE_DECODE);
        PDPageContentStream out = new PDPageContentStream(file, panel, bytes)) {
      drawGround(out, place);
      double top = 0;
      for (int i = 0; i < lines.size(); i++) {
        FontSize size = i == 0 ? FontSize.BODY : FontSize.SMALL;
        Text.Style style = i == 0 ? Text.Style.STRONG : Text.Style.PLAIN;
        for (TextLine line : text.lines(size, style, lines.get(i), place.getWidth())) {
          write(out, size, line, place.getHeight() - top - size.baseline());
          top += size.leading;
        }
      }
    }
    return panel;
  }

  private static void drawGround(PDPageContentStream out, PDRectangle place) throws IOException {
    out.setNonStrokingColor(Color.WHITE.red, Color.WHITE.green, Color.WHITE.blue);
    out.addRect(0, 0, place.getWidth(), place.getHeight());
    out.fill();
    out.setNonStrokingColor(Color.BLACK.red, Color.BLACK.green, Color.BLACK.blue);
  }

  private void write(PDPageContentStream out, FontSize size, TextLine line, double baseline)
      throws IOException {
    for (TextLine.Piece piece : line.pieces()) {
      out.beginText();
      out.setFont(fonts.font(piece.style()), (float) size.points);
      out.newLineAtOffset((float) piece.x(), (float) baseline);
      out.showText(piece.text());
      out.endText();
    }
  }
}
