package org.flitchbook.document;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Breaks text into lines of so many characters. */
final class TextLines {
  private TextLines() {}

  /** The lines of a text, each at most {@code width} characters; one empty line for no text. */
  static List<String> wrap(String text, int width) {
    List<String> lines = new ArrayList<>();
    for (String part : Text.printable(text).split("\n", -1)) {
      wrapPart(part, width, lines);
    }
    return lines;
  }

  private static void wrapPart(String part, int width, List<String> lines) {
    StringBuilder line = new StringBuilder();
    for (String word : part.strip().split(" +", -1)) {
      if (!line.isEmpty() && length(line) + 1 + length(word) > width) {
        lines.add(line.toString());
        line.setLength(0);
      }
      line.append(line.isEmpty() ? "" : " ").append(word);
      cutLongWord(line, width, lines);
    }
    lines.add(line.toString());
  }

  private static void cutLongWord(StringBuilder line, int width, List<String> lines) {
    while (length(line) > width) {
      int cut = line.offsetByCodePoints(0, width);
      lines.add(line.substring(0, cut));
      line.delete(0, cut);
    }
  }

  static int length(CharSequence text) {
    return Character.codePointCount(text, 0, text.length());
  }

  static int longestWord(String text) {
    return Arrays.stream(Text.printable(text).split("[ \n]+"))
        .mapToInt(TextLines::length)
        .max()
        .orElse(0);
  }

  static int longestLine(String text) {
    return Arrays.stream(Text.printable(text).split("\n"))
        .mapToInt(TextLines::length)
        .max()
        .orElse(0);
  }

  /** Text moved within a column; a text longer than the column stays whole. */
  static String pad(String text, int width, Table.Align align) {
    int room = Math.max(0, width - length(text));
    int before =
        switch (align) {
          case LEFT -> 0;
          case RIGHT -> room;
          case CENTER -> room / 2;
        };
    return " ".repeat(before) + text + " ".repeat(room - before);
  }
}
