package org.flitchbook.pdf;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.flitchbook.document.Text;

/**
 * The two cuts of the one typeface, embedded as subsets, with the width of every character.
 *
 * <p>Glyph substitution is off: else PDFBox stores "fi" as a ligature, and a search for "fillet"
 * finds nothing.
 */
final class Fonts {
  private record Cut(PDFont font, Widths widths) {}

  private final Cut plain;
  private final Cut strong;

  Fonts(PDDocument file) throws IOException {
    plain = load(file, "DejaVuSansCondensed.ttf");
    strong = load(file, "DejaVuSansCondensed-Bold.ttf");
  }

  private static Cut load(PDDocument file, String name) throws IOException {
    TrueTypeFont font = new TTFParser().parse(new RandomAccessReadBuffer(Pdf.resource(name)));
    font.setEnableGsub(false);
    return new Cut(PDType0Font.load(file, font, true), new Widths(font));
  }

  private Cut cut(Text.Style style) {
    return style == Text.Style.STRONG ? strong : plain;
  }

  PDFont font(Text.Style style) {
    return cut(style).font();
  }

  /** Advance of a character in parts of the size of the type; 0 for one without a glyph. */
  double width(Text.Style style, int character) {
    return cut(style).widths().of(character);
  }

  /** Whether both cuts can show a character. */
  boolean shows(int character) {
    return plain.widths().shows(character) && strong.widths().shows(character);
  }

  /** The advance of each character of a font, looked up once. */
  private static final class Widths {
    private static final int COMMON = 0x2800;
    private static final float NO_GLYPH = -1;

    private final TrueTypeFont font;
    private final CmapLookup glyphs;
    private final float unitsPerEm;
    private final float[] common = new float[COMMON];
    private final Map<Integer, Float> rare = new HashMap<>();

    Widths(TrueTypeFont font) throws IOException {
      this.font = font;
      this.glyphs = font.getUnicodeCmapLookup();
      this.unitsPerEm = font.getUnitsPerEm();
      Arrays.fill(common, Float.NaN);
    }

    double of(int character) {
      return Math.max(0, cached(character));
    }

    boolean shows(int character) {
      return cached(character) != NO_GLYPH;
    }

    private float cached(int character) {
      if (character >= COMMON) {
        return rare.computeIfAbsent(character, this::lookUp);
      }
      if (Float.isNaN(common[character])) {
        common[character] = lookUp(character);
      }
      return common[character];
    }

    private float lookUp(int character) {
      int glyph = glyphs.getGlyphId(character);
      try {
        return glyph == 0 ? NO_GLYPH : font.getAdvanceWidth(glyph) / unitsPerEm;
      } catch (IOException e) {
        throw new UncheckedIOException("the font has no width for glyph " + glyph, e);
      }
    }
  }
}
