package org.flitchbook.pdf;

import java.io.IOException;
import java.lang.Character.UnicodeScript;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.function.IntPredicate;
import java.util.stream.Stream;
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

  double widest(FontSize size, Text.Style style, Stream<String> texts) {
    return texts.mapToDouble(text -> width(size, style, text)).max().orElse(0);
  }

  /**
   * Makes a string one that the font can show. Letters without a glyph, or of a script that is
   * written from the right and would come out backwards, are counted and their script is named:
   * that something was written can be seen, and what it was stands in the files. A sign of no
   * script is named by its number in Unicode.
   */
  private static final class GlyphFallback {
    private static final Set<UnicodeScript> NO_SCRIPT =
        Set.of(UnicodeScript.COMMON, UnicodeScript.INHERITED, UnicodeScript.UNKNOWN);

    private final IntPredicate hasGlyph;
    private final Words words;

    GlyphFallback(IntPredicate hasGlyph, Words words) {
      this.hasGlyph = hasGlyph;
      this.words = words;
    }

    String of(String text) {
      String printable = Text.printable(text);
      if (printable.codePoints().allMatch(this::shown)) {
        return printable;
      }
      int[] codes = printable.codePoints().toArray();
      StringBuilder kept = new StringBuilder(printable.length());
      for (int from = 0; from < codes.length; ) {
        int to = end(codes, from);
        kept.append(shown(codes[from]) ? Character.toString(codes[from]) : named(codes, from, to));
        from = to;
      }
      return kept.toString();
    }

    /** The end of the letters of one script that begin here, marks upon them included. */
    private int end(int[] codes, int from) {
      int to = from + 1;
      while (!shown(codes[from]) && to < codes.length && goesOn(codes[from], codes[to])) {
        to++;
      }
      return to;
    }

    private boolean goesOn(int first, int next) {
      return isMark(next)
          || (!shown(next) && isLetter(first) && UnicodeScript.of(next) == UnicodeScript.of(first));
    }

    private String named(int[] codes, int from, int to) {
      if (!isLetter(codes[from])) {
        return String.format(Locale.ROOT, "[U+%04X]", codes[from]);
      }
      long letters = Arrays.stream(codes, from, to).filter(code -> !isMark(code)).count();
      return words.count(
          "pdf.unshown",
          letters,
          "[{0} letter of the script {1}]",
          "[{0} letters of the script {1}]",
          name(UnicodeScript.of(codes[from])));
    }

    private static String name(UnicodeScript script) {
      String words = script.name().replace('_', ' ').toLowerCase(Locale.ROOT);
      return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }

    /** Whether it belongs to a script, which an emoji and a mark do not. */
    private static boolean isLetter(int character) {
      return !NO_SCRIPT.contains(UnicodeScript.of(character));
    }

    private static boolean isMark(int character) {
      int type = Character.getType(character);
      return type == Character.NON_SPACING_MARK
          || type == Character.ENCLOSING_MARK
          || type == Character.COMBINING_SPACING_MARK;
    }

    private boolean shown(int character) {
      if (character == '\n' || (character >= ' ' && character < 0x7f)) {
        return true;
      }
      byte direction = Character.getDirectionality(character);
      return direction != Character.DIRECTIONALITY_RIGHT_TO_LEFT
          && direction != Character.DIRECTIONALITY_RIGHT_TO_LEFT_ARABIC
          && hasGlyph.test(character);
    }
  }
}
