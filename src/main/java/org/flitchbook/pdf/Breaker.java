package org.flitchbook.pdf;

import java.util.ArrayList;
import java.util.List;

/** Breaks characters into lines, first fit. A word longer than a line is cut. */
final class Breaker {
  private static final double ROUNDING = 0.01;

  private final Fonts fonts;
  private final Type type;
  private final Characters text;

  Breaker(Fonts fonts, Type type, Characters text) {
    this.fonts = fonts;
    this.type = type;
    this.text = text;
  }

  private double width(int index) {
    return fonts.width(Type.face(text.style(index)), text.code(index)) * type.size;
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

  List<Line> lines(double measure) {
    List<Line> lines = new ArrayList<>();
    int start = 0;
    while (start < text.length) {
      int end = end(start, measure);
      lines.add(line(start, end));
      start = end;
    }
    if (lines.isEmpty() || text.is(text.length - 1, '\n')) {
      lines.add(new Line(List.of(), 0));
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

  private Line line(int start, int end) {
    int seen = end;
    while (seen > start && (text.is(seen - 1, ' ') || text.is(seen - 1, '\n'))) {
      seen--;
    }
    // A line broken at a space keeps one, else a reader of the file joins two words.
    boolean joined = seen < end && seen > start && end < text.length;
    return pieces(start, seen, joined ? " " : "");
  }

  private Line pieces(int start, int end, String last) {
    List<Line.Piece> pieces = new ArrayList<>();
    double x = 0;
    int from = start;
    while (from < end) {
      double begin = x;
      int to = from;
      while (to < end && text.agree(from, to)) {
        x += width(to++);
      }
      String words = text.text(from, to) + (to == end ? last : "");
      pieces.add(new Line.Piece(words, text.style(from), text.target(from), begin, x - begin));
      from = to;
    }
    return new Line(pieces, x);
  }
}
