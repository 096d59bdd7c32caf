package org.flitchbook.pdf;

import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.InputStream;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;

/**
 * The faces of one file, embedded as subsets, with the width of every character.
 *
 * <p>Glyph substitution is off: else PDFBox stores "fi" as a ligature, and a search for "fillet"
 * finds nothing.
 */
final class Fonts {
  private record Cut(PDFont font, Widths widths) {}

  private final Cut plain;
  private final Cut strong;

  Fonts(PDDocument file) throws IOException {
    plain = load(file, Face.PLAIN);
    strong = load(file, Face.STRONG);
  }

  private static Cut load(PDDocument file, Face face) throws IOException {
    TrueTypeFont font = parse(face);
    font.setEnableGsub(false);
    return new Cut(PDType0Font.load(file, font, true), new Widths(font));
  }

  private static TrueTypeFont parse(Face face) throws IOException {
    try (InputStream in = Fonts.class.getResourceAsStream(face.file)) {
      if (in == null) {
        throw new FileNotFoundException("the font " + face.file + " is missing from the program");
      }
      return new TTFParser().parse(new RandomAccessReadBuffer(in.readAllBytes()));
    }
  }

  private Cut cut(Face face) {
    return face == Face.STRONG ? strong : plain;
  }

  PDFont font(Face face) {
    return cut(face).font();
  }

  /** Advance of a character in parts of the size of the type; 0 for one without a glyph. */
  double width(Face face, int character) {
    return cut(face).widths().of(character);
  }

  /** Whether both faces can show a character. */
  boolean shows(int character) {
    return plain.widths().shows(character) && strong.widths().shows(character);
  }
}
