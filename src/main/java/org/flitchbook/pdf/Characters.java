package org.flitchbook.pdf;

import java.util.List;
import org.flitchbook.document.Span;
import org.flitchbook.document.Style;

/** The characters of a text with the style of each. */
final class Characters {
  final int length;
  private final int[] codes;
  private final Style[] styles;

  Characters(List<Span> spans) {
    int room = spans.stream().mapToInt(span -> span.text().length()).sum();
    codes = new int[room];
    styles = new Style[room];
    int at = 0;
    for (Span span : spans) {
      String text = span.text();
      for (int i = 0; i < text.length(); i += Character.charCount(codes[at++])) {
        codes[at] = text.codePointAt(i);
        styles[at] = span.style();
      }
    }
    length = at;
  }

  int code(int index) {
    return codes[index];
  }

  Style style(int index) {
    return styles[index];
  }

  String text(int from, int to) {
    return new String(codes, from, to - from);
  }

  boolean is(int index, int code) {
    return index < length && codes[index] == code;
  }

  /**
   * Whether a line may end after this character: after a space, and within a long name after a
   * dash, stroke or underline that a letter follows. A date or a range of numbers stays whole.
   */
  boolean breaksAfter(int index) {
    int code = codes[index];
    if (code == ' ') {
      return true;
    }
    boolean joins = code == '-' || code == '/' || code == '_' || code == 0x2013 || code == 0x2014;
    return joins && index > 0 && index + 1 < length && Character.isLetter(codes[index + 1]);
  }
}
