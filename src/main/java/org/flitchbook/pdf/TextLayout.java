package org.flitchbook.pdf;

import java.util.ArrayList;
import java.util.List;
import org.flitchbook.document.Text;
import org.flitchbook.words.Words;

/** Sets text in lines of a given width. */
final class TextLayout {
  private static final int BALANCED = 3;

  private final Fonts fonts;
  private final GlyphFallback fallback;

  TextLayout(Fonts fonts, Words words) {
    this.fonts = fonts;
    this.fallback = new GlyphFallback(fonts, words);
  }

  /** The lines of a text; one empty line for no text. */
  List<TextLine> lines(FontSize size, Text text, double width) {
    return new LineBreaker(fonts, size, characters(text)).lines(width);
  }

  List<TextLine> lines(FontSize size, Text.Style style, String text, double width) {
    return lines(size, new Text(List.of(new Text.Span(text, style))), width);
  }

  /**
   * As {@link #lines}, but the few lines of a short text are made about equally long, so that no
   * single letter stands alone on the last one.
   */
  List<TextLine> balanced(FontSize size, Text text, double width) {
    LineBreaker breaker = new LineBreaker(fonts, size, characters(text));
    List<TextLine> best = breaker.lines(width);
    if (best.size() < 2 || best.size() > BALANCED) {
      return best;
    }
    // Never narrower than the longest word, which would be cut.
    double low = Math.min(width, Math.max(width / 2, breaker.least()));
    double high = width;
    for (int i = 0; i < 5; i++) {
      double middle = (low + high) / 2;
      List<TextLine> tried = breaker.lines(middle);
      boolean same = tried.size() == best.size();
      best = same ? tried : best;
      high = same ? middle : high;
      low = same ? low : middle;
    }
    return best;
  }

  /** The width of a text whose lines are broken only where it says so. */
  double natural(FontSize size, Text text) {
    return new LineBreaker(fonts, size, characters(text)).natural();
  }

  /** The width of the longest word. */
  double least(FontSize size, Text text) {
    return new LineBreaker(fonts, size, characters(text)).least();
  }

  double width(FontSize size, Text.Style style, String text) {
    return natural(size, new Text(List.of(new Text.Span(text, style))));
  }

  private LineBreaker.Characters characters(Text text) {
    List<Text.Span> spans = new ArrayList<>(text.spans().size());
    for (Text.Span span : text.spans()) {
      spans.add(span.saying(fallback.of(span.text())));
    }
    return new LineBreaker.Characters(spans);
  }
}
