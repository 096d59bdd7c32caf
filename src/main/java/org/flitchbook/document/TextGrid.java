package org.flitchbook.document;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** Rows of text in aligned columns, broken into lines of so many characters. */
final class TextGrid {
  private static final int GAP = 2;

  private final List<Table.Column> columns;
  private final List<List<String>> rows;
  private final int room;
  private final double[] least;
  private final double[] natural;

  /**
   * A grid that keeps within a width; the heads, if any, are its first row.
   *
   * @param rows each with as many cells as there are columns
   */
  TextGrid(List<Table.Column> columns, List<List<String>> rows, int width) {
    this.columns = columns;
    this.rows = rows;
    this.room = width - GAP * (columns.size() - 1);
    this.least = widest("[ \n]+");
    this.natural = widest("\n");
  }

  private double[] widest(String between) {
    return IntStream.range(0, columns.size())
        .mapToDouble(
            column ->
                rows.stream()
                    .map(row -> row.get(column))
                    .flatMap(cell -> Arrays.stream(Text.printable(cell).split(between)))
                    .mapToInt(TextGrid::length)
                    .max()
                    .orElse(0))
        .toArray();
  }

  /** Whether no word has to be broken. */
  boolean fits() {
    return Arrays.stream(least).sum() <= room;
  }

  List<List<String>> lines() {
    int[] widths = widths();
    return rows.stream().map(row -> lines(row, widths)).toList();
  }

  /** A rule under the lines of the heads, as wide as the grid. */
  String rule(List<String> heads) {
    int ruled = heads.stream().mapToInt(TextGrid::length).max().orElse(0);
    int whole = Arrays.stream(widths()).sum() + GAP * (columns.size() - 1);
    return "─".repeat(Math.max(ruled, whole));
  }

  /** Columns are never wider than their content: a terminal needs no full measure. */
  private int[] widths() {
    double[] shares = Table.share(columns, room, least, natural);
    return IntStream.range(0, shares.length)
        .map(i -> Math.max(1, (int) Math.min(natural[i], Math.floor(shares[i] + 1e-6))))
        .toArray();
  }

  private List<String> lines(List<String> cells, int[] widths) {
    List<List<String>> wrapped = new ArrayList<>();
    for (int i = 0; i < widths.length; i++) {
      wrapped.add(wrap(cells.get(i), widths[i]));
    }
    int height = wrapped.stream().mapToInt(List::size).max().orElse(0);
    return IntStream.range(0, height).mapToObj(line -> line(wrapped, line, widths)).toList();
  }

  private String line(List<List<String>> wrapped, int line, int[] widths) {
    return IntStream.range(0, widths.length)
        .mapToObj(
            i -> {
              String text = line < wrapped.get(i).size() ? wrapped.get(i).get(line) : "";
              return pad(text, widths[i], columns.get(i).align());
            })
        .collect(Collectors.joining(" ".repeat(GAP)))
        .stripTrailing();
  }

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
