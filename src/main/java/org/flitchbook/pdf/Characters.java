package org.flitchbook.pdf;

import java.util.List;
import java.util.Optional;
import org.flitchbook.document.Text;

/** The characters of a text with the style of each. */
final class Characters {
  final int length;
  private final int[] codes;
  private final Text.Span[] spans;

  Characters(List<Text.Span> spans) {
    int room = spans.stream().mapToInt(span -> span.text().length()).sum();
    codes = new int[room];
    this.spans = new Text.Span[room];
    int at = 0;
    for (Text.Span span : spans) {
      String text = span.text();
      for (int i = 0; i < text.length(); i += Character.charCount(codes[at++])) {
        codes[at] = text.codePointAt(i);
        this.spans[at] = span;
      }
    }
    length = at;
  }

  int code(int index) {
    return codes[index];
  }

  Text.Style style(int index) {
    return spans[index].style();
  }

  Optional<Text.Target> target(int index) {
    return spans[index].target();
  }

  /** Whether two characters look alike and lead to the same place. */
  boolean agree(int one, int other) {
    return style(one) == style(other) && target(one).equals(target(other));
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
