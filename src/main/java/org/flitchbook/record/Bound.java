package org.flitchbook.record;

import java.util.regex.Pattern;
import org.flitchbook.document.Span;
import org.flitchbook.document.Style;
import org.flitchbook.document.Text;

/** Text for a document, in which a number is never parted from its unit at a line's end. */
final class Bound {

  private static final Pattern NUMBER_AND_UNIT =
      Pattern.compile("(\\d) (?=(?:°F|°C|ppm|%|mm|min|kg|g|oz|lb|h|d|s)(?![\\p{L}]))");

  private static final Pattern BOUND = Pattern.compile("at (most|least) (?=\\d)");

  private Bound() {}

  static Text of(String text) {
    return Text.of(bound(text));
  }

  static Text strong(String text) {
    return Text.strong(bound(text));
  }

  static Text muted(String text) {
    return Text.muted(bound(text));
  }

  static Span span(String text, Style style) {
    return new Span(bound(text), style);
  }

  static String bound(String text) {
    String units = NUMBER_AND_UNIT.matcher(text).replaceAll("$1\u00a0");
    return BOUND.matcher(units).replaceAll("at $1\u00a0");
  }
}
