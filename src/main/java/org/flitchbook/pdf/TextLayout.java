package org.flitchbook.pdf;

import java.io.IOException;
import java.util.List;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.HorizontalMetricsTable;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.flitchbook.document.Text;
import org.flitchbook.words.Words;

/**
 * Sets text in the two cuts of the one typeface, embedded as subsets.
 *
 * <p>Glyph substitution is off: else PDFBox stores "fi" as a ligature, and a search for "fillet"
 * finds nothing.
 */
final class TextLayout {
  private record Cut(PDFont font, CmapLookup glyphs, HorizontalMetricsTable widths, int em) {
    boolean shows(int character) {
      return glyphs.getGlyphId(character) != 0;
    }
  }

  private final Cut plain;
  private final Cut strong;
  private final GlyphFallback fallback;

  TextLayout(PDDocument file, Words words) throws IOException {
    plain = load(file, "DejaVuSansCondensed.ttf");
    strong = load(file, "DejaVuSansCondensed-Bold.ttf");
    fallback = new GlyphFallback(code -> plain.shows(code) && strong.shows(code), words);
  }

  private static Cut load(PDDocument file, String name) throws IOException {
    TrueTypeFont font = new TTFParser().parse(new RandomAccessReadBuffer(Pdf.resource(name)));
    font.setEnableGsub(false);
    return new Cut(
        PDType0Font.load(file, font, true),
        font.getUnicodeCmapLookup(),
        font.getHorizontalMetrics(),
        font.getUnitsPerEm());
  }

  private Cut cut(Text.Style style) {
    return style == Text.Style.STRONG ? strong : plain;
  }

  PDFont font(Text.Style style) {
    return cut(style).font();
  }

  /** Advance of a character in parts of the size of the type; 0 for one without a glyph. */
  double width(Text.Style style, int character) {
    Cut cut = cut(style);
    int glyph = cut.glyphs().getGlyphId(character);
    return glyph == 0 ? 0 : cut.widths().getAdvanceWidth(glyph) / (float) cut.em();
  }

  LineBreaker of(FontSize size, Text text) {
    return new LineBreaker(
        this,
        size,
        text.spans().stream().map(span -> span.saying(fallback.of(span.text()))).toList());
  }

  private LineBreaker of(FontSize size, Text.Style style, String text) {
    return of(size, new Text(List.of(new Text.Span(text, style))));
  }

  /** The lines of a text; one empty line for no text. */
  List<TextLine> lines(FontSize size, Text.Style style, String text, double width) {
    return of(size, style, text).lines(width);
  }

  /** A text without line feeds in one line. */
  TextLine line(FontSize size, Text.Style style, String text) {
    return lines(size, style, text, Double.MAX_VALUE).get(0);
  }

  double width(FontSize size, Text.Style style, String text) {
    return of(size, style, text).natural();
  }
}
