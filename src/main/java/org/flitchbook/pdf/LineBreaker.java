package org.flitchbook.pdf;

import java.util.ArrayList;
import java.util.List;
import org.flitchbook.document.Text;

/** Breaks characters into lines, first fit. A word longer than a line is cut. */
final class LineBreaker {
  private static final double ROUNDING = 0.01;
  private static final int BALANCED = 3;

  private final TextLayout fonts;
  private final FontSize size;
  private final int length;

  /** The characters of the text, with the span of each. */
  private final int[] codes;

  private final Text.Span[] spans;

  LineBreaker(TextLayout fonts, FontSize size, List<Text.Span> text) {
    this.fonts = fonts;
    this.size = size;
    int room = text.stream().mapToInt(span -> span.text().length()).sum();
    codes = new int[room];
    spans = new Text.Span[room];
    int at = 0;
    for (Text.Span span : text) {
      for (int i = 0; i < span.text().length(); i += Character.charCount(codes[at++])) {
        codes[at] = span.text().codePointAt(i);
        spans[at] = span;
      }
    }
    length = at;
  }

  private double width(int index) {
    return fonts.width(spans[index].style(), codes[index]) * size.points;
  }

  /** The width of the text if lines are broken only where it says so. */
  double natural() {
    return longest(false);
  }

  /** The width of the longest word. */
  double least() {
    return longest(true);
  }

  private double longest(boolean words) {
    double longest = 0;
    double run = 0;
    for (int i = 0; i < length; i++) {
      run = is(i, '\n') || (words && is(i, ' ')) ? 0 : run + width(i);
      longest = Math.max(longest, run);
      run = words && breaksAfter(i) ? 0 : run;
    }
    return longest;
  }

  /** The lines of the text; one empty line for no text. */
  List<TextLine> lines(double measure) {
    List<TextLine> lines = new ArrayList<>();
    int start = 0;
    while (start < length) {
      int end = end(start, measure);
      lines.add(line(start, end));
      start = end;
    }
    if (lines.isEmpty() || is(length - 1, '\n')) {
      lines.add(new TextLine(size, List.of(), 0));
    }
    return lines;
  }

  /**
   * As {@link #lines}, but the few lines of a short text are made about equally long, so that no
   * single letter stands alone on the last one.
   */
  List<TextLine> balanced(double width) {
    List<TextLine> best = lines(width);
    if (best.size() < 2 || best.size() > BALANCED) {
      return best;
    }
    // Never narrower than the longest word, which would be cut.
    double low = Math.min(width, Math.max(width / 2, least()));
    double high = width;
    for (int i = 0; i < 5; i++) {
      double middle = (low + high) / 2;
      List<TextLine> tried = lines(middle);
      boolean same = tried.size() == best.size();
      best = same ? tried : best;
      high = same ? middle : high;
      low = same ? low : middle;
    }
    return best;
  }

  /** Where the line that begins at {@code start} ends; the spaces at its end belong to it. */
  private int end(int start, double measure) {
    double width = 0;
    int lastBreak = start;
    for (int i = start; i < length; i++) {
      if (is(i, '\n')) {
        return i + 1;
      }
      width += width(i);
      if (width > measure + ROUNDING && !is(i, ' ')) {
        return lastBreak > start ? lastBreak : Math.max(i, start + 1);
      }
      lastBreak = breaksAfter(i) ? i + 1 : lastBreak;
    }
    return length;
  }

  private TextLine line(int start, int end) {
    int seen = end;
    while (seen > start && (is(seen - 1, ' ') || is(seen - 1, '\n'))) {
      seen--;
    }
    // A line broken at a space keeps one, else a reader of the file joins two words.
    boolean joined = seen < end && seen > start && end < length;
    return pieces(start, seen, joined ? " " : "");
  }

  private TextLine pieces(int start, int end, String last) {
    List<TextLine.Piece> pieces = new ArrayList<>();
    double x = 0;
    int from = start;
    while (from < end) {
      double begin = x;
      int to = from;
      while (to < end && agree(from, to)) {
        x += width(to++);
      }
      String words = new String(codes, from, to - from) + (to == end ? last : "");
      Text.Span span = spans[from];
      pieces.add(new TextLine.Piece(words, span.style(), span.target(), begin, x - begin));
      from = to;
    }
    return new TextLine(size, pieces, x);
  }

  /** Whether two characters look alike and lead to the same place. */
  private boolean agree(int one, int other) {
    return spans[one].style() == spans[other].style()
        && spans[one].target().equals(spans[other].target());
  }

  private boolean is(int index, int code) {
    return codes[index] == code;
  }

  /**
   * Whether a line may end after this character: after a space, and within a long name after a
   * dash, stroke or underline that a letter follows. A date or a range of numbers stays whole.
   */
  private boolean breaksAfter(int index) {
    boolean joins = "-/_\u2013\u2014".indexOf(codes[index]) >= 0;
    return is(index, ' ')
        || (joins && index > 0 && index + 1 < length && Character.isLetter(codes[index + 1]));
  }
}
