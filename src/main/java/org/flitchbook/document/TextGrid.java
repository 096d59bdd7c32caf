package org.flitchbook.document;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.flitchbook.words.Words;

/** Rows of text in aligned columns. */
final class TextGrid {
  private static final int GAP = 2;

  private final Table table;
  private final Words words;
  private final int width;
  private final double[] least;
  private final double[] natural;

  /** A grid for the columns and rows of a table; the heads are asked for with {@link #heads}. */
  TextGrid(Table table, Words words, int width, boolean heads) {
    this.table = table;
    this.words = words;
    this.width = width;
    this.least = new double[table.columns().size()];
    this.natural = new double[least.length];
    if (heads) {
      measure(heads());
    }
    table.rows().forEach(row -> measure(words(row)));
  }

  private List<String> heads() {
    return table.columns().stream().map(Table.Column::head).toList();
  }

  private List<String> words(Table.Row row) {
    return row.cells().stream().map(cell -> PlainText.words(cell, words)).toList();
  }

  private void measure(List<String> cells) {
    for (int i = 0; i < cells.size(); i++) {
      least[i] = Math.max(least[i], TextLines.longestWord(cells.get(i)));
      natural[i] = Math.max(natural[i], TextLines.longestLine(cells.get(i)));
    }
  }

  private int room() {
    return width - GAP * (least.length - 1);
  }

  /** Whether no word has to be broken. */
  boolean fits() {
    double needed = 0;
    for (double word : least) {
      needed += word;
    }
    return needed <= room();
  }

  List<String> headLines() {
    List<String> lines = new ArrayList<>(lines(heads(), widths()));
    int ruled = lines.stream().mapToInt(TextLines::length).max().orElse(0);
    lines.add("─".repeat(Math.max(ruled, total())));
    return lines;
  }

  private int total() {
    int total = GAP * (least.length - 1);
    for (int each : widths()) {
      total += each;
    }
    return total;
  }

  List<String> rowLines() {
    int[] widths = widths();
    List<String> lines = new ArrayList<>();
    table.rows().forEach(row -> lines.addAll(lines(words(row), widths)));
    return lines;
  }

  /** Columns are never wider than their content: a terminal needs no full measure. */
  private int[] widths() {
    double[] shares = table.share(room(), least, natural);
    int[] widths = new int[shares.length];
    for (int i = 0; i < shares.length; i++) {
      widths[i] = Math.max(1, (int) Math.min(natural[i], Math.floor(shares[i] + 1e-6)));
    }
    return widths;
  }

  private List<String> lines(List<String> cells, int[] widths) {
    List<List<String>> columns = new ArrayList<>();
    for (int i = 0; i < cells.size(); i++) {
      columns.add(TextLines.wrap(cells.get(i), widths[i]));
    }
    int height = Collections.max(columns.stream().map(List::size).toList());
    List<String> lines = new ArrayList<>();
    for (int line = 0; line < height; line++) {
      lines.add(line(columns, line, widths));
    }
    return lines;
  }

  private String line(List<List<String>> columns, int line, int[] widths) {
    StringBuilder joined = new StringBuilder();
    for (int i = 0; i < widths.length; i++) {
      String text = line < columns.get(i).size() ? columns.get(i).get(line) : "";
      joined.append(i == 0 ? "" : " ".repeat(GAP));
      joined.append(TextLines.pad(text, widths[i], table.columns().get(i).align()));
    }
    return joined.toString().stripTrailing();
  }
}
