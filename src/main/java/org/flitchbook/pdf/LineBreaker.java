package org.flitchbook.pdf;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.flitchbook.document.Text;

/** Breaks characters into lines, first fit. A word longer than a line is cut. */
final class LineBreaker {
  private static final double ROUNDING = 0.01;

  private final Fonts fonts;
  private final FontSize size;
  private final Characters text;

  LineBreaker(Fonts fonts, FontSize size, Characters text) {
    this.fonts = fonts;
    this.size = size;
    this.text = text;
  }

  private double width(int index) {
    return fonts.width(text.style(index), text.code(index)) * size.points;
  }

  double natural() {
    double longest = 0;
    double line = 0;
    for (int i = 0; i < text.length; i++) {
      line = text.is(i, '\n') ? 0 : line + width(i);
      longest = Math.max(longest, line);
    }
    return longest;
  }

  double least() {
    double longest = 0;
    double word = 0;
    for (int i = 0; i < text.length; i++) {
      boolean blank = text.is(i, '\n') || text.is(i, ' ');
      word = blank ? 0 : word + width(i);
      longest = Math.max(longest, word);
      word = text.breaksAfter(i) ? 0 : word;
    }
    return longest;
  }

  List<TextLine> lines(double measure) {
    List<TextLine> lines = new ArrayList<>();
    int start = 0;
    while (start < text.length) {
      int end = end(start, measure);
      lines.add(line(start, end));
      start = end;
    }
    if (lines.isEmpty() || text.is(text.length - 1, '\n')) {
      lines.add(new TextLine(List.of(), 0));
    }
    return lines;
  }

  /** Where the line that begins at {@code start} ends; the spaces at its end belong to it. */
  private int end(int start, double measure) {
    double width = 0;
    int lastBreak = start;
    for (int i = start; i < text.length; i++) {
      if (text.is(i, '\n')) {
        return i + 1;
      }
      width += width(i);
      if (width > measure + ROUNDING && !text.is(i, ' ')) {
        return lastBreak > start ? lastBreak : Math.max(i, start + 1);
      }
      lastBreak = text.breaksAfter(i) ? i + 1 : lastBreak;
    }
    return text.length;
  }

  private TextLine line(int start, int end) {
    int seen = end;
    while (seen > start && (text.is(seen - 1, ' ') || text.is(seen - 1, '\n'))) {
      seen--;
    }
    // A line broken at a space keeps one, else a reader of the file joins two words.
    boolean joined = seen < end && seen > start && end < text.length;
    return pieces(start, seen, joined ? " " : "");
  }

  private TextLine pieces(int start, int end, String last) {
    List<TextLine.Piece> pieces = new ArrayList<>();
    double x = 0;
    int from = start;
    while (from < end) {
      double begin = x;
      int to = from;
      while (to < end && text.agree(from, to)) {
        x += width(to++);
      }
      String words = text.text(from, to) + (to == end ? last : "");
      pieces.add(new TextLine.Piece(words, text.style(from), text.target(from), begin, x - begin));
      from = to;
    }
    return new TextLine(pieces, x);
  }

  /** The characters of a text with the style of each. */
  static final class Characters {
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
}
