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
  private final Setting setting;

  SignatureAppearance(PDDocument file, Words words) throws IOException {
    this.file = file;
    this.fonts = new Fonts(file);
    this.setting = new Setting(fonts, words);
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
        Type type = i == 0 ? Type.BODY : Type.SMALL;
        Text.Style style = i == 0 ? Text.Style.STRONG : Text.Style.PLAIN;
        for (Line line : setting.lines(type, style, lines.get(i), place.getWidth())) {
          write(out, type, line, place.getHeight() - top - type.baseline());
          top += type.leading;
        }
      }
    }
    return panel;
  }

  private static void drawGround(PDPageContentStream out, PDRectangle place) throws IOException {
    out.setNonStrokingColor(Ink.WHITE.red, Ink.WHITE.green, Ink.WHITE.blue);
    out.addRect(0, 0, place.getWidth(), place.getHeight());
    out.fill();
    out.setNonStrokingColor(Ink.BLACK.red, Ink.BLACK.green, Ink.BLACK.blue);
  }

  private void write(PDPageContentStream out, Type type, Line line, double baseline)
      throws IOException {
    for (Line.Piece piece : line.pieces()) {
      out.beginText();
      out.setFont(fonts.font(Type.face(piece.style())), (float) type.size);
      out.newLineAtOffset((float) piece.x(), (float) baseline);
      out.showText(piece.text());
      out.endText();
    }
  }
}
