package org.flitchbook.pdf;

import java.util.ArrayList;
import java.util.List;
import org.flitchbook.document.Text;
import org.flitchbook.words.Words;

/** Sets text in lines of a given width. */
final class Setting {
  private static final int BALANCED = 3;

  private final Fonts fonts;
  private final Legible legible;

  Setting(Fonts fonts, Words words) {
    this.fonts = fonts;
    this.legible = new Legible(fonts, words);
  }

  /** The lines of a text; one empty line for no text. */
  List<Line> lines(Type type, Text text, double width) {
    return new Breaker(fonts, type, characters(text)).lines(width);
  }

  List<Line> lines(Type type, Text.Style style, String text, double width) {
    return lines(type, new Text(List.of(new Text.Span(text, style))), width);
  }

  /**
   * As {@link #lines}, but the few lines of a short text are made about equally long, so that no
   * single letter stands alone on the last one.
   */
  List<Line> balanced(Type type, Text text, double width) {
    Breaker breaker = new Breaker(fonts, type, characters(text));
    List<Line> best = breaker.lines(width);
    if (best.size() < 2 || best.size() > BALANCED) {
      return best;
    }
    // Never narrower than the longest word, which would be cut.
    double low = Math.min(width, Math.max(width / 2, breaker.least()));
    double high = width;
    for (int i = 0; i < 5; i++) {
      double middle = (low + high) / 2;
      List<Line> tried = breaker.lines(middle);
      boolean same = tried.size() == best.size();
      best = same ? tried : best;
      high = same ? middle : high;
      low = same ? low : middle;
    }
    return best;
  }

  /** The width of a text whose lines are broken only where it says so. */
  double natural(Type type, Text text) {
    return new Breaker(fonts, type, characters(text)).natural();
  }

  /** The width of the longest word. */
  double least(Type type, Text text) {
    return new Breaker(fonts, type, characters(text)).least();
  }

  double width(Type type, Text.Style style, String text) {
    return natural(type, new Text(List.of(new Text.Span(text, style))));
  }

  private Characters characters(Text text) {
    List<Text.Span> spans = new ArrayList<>(text.spans().size());
    for (Text.Span span : text.spans()) {
      spans.add(span.saying(legible.of(span.text())));
    }
    return new Characters(spans);
  }
}
