package org.flitchbook.pdf;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TrueTypeFont;

/** The advance of each character of a font, looked up once. */
final class Widths {
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
