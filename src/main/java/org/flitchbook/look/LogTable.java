package org.flitchbook.look;

import java.nio.charset.Charset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Severity;
import org.flitchbook.input.SourceFile;
import org.flitchbook.table.FileText;
import org.flitchbook.table.Layout;
import org.flitchbook.table.Row;
import org.flitchbook.table.Rows;
import org.flitchbook.table.Tables;

/**
 * Where in a file the table stands: what parts its cells, and how many lines come before it.
 *
 * @param heading the words by which the columns are called; their numbers where no row of words
 *     tells them apart
 * @param headed whether the heading stands in the file
 * @param labels what the file itself says above the columns
 * @param units a row of units above the first reading, or an empty one
 * @param before the lines before the table, as they stand there
 * @param sample rows of data under the heading, of the first
 */
record LogTable(
    Layout layout,
    Row heading,
    boolean headed,
    Row labels,
    Row units,
    List<String> before,
    List<Row> sample) {

  /** So many rows show what a file is. */
  private static final int ENOUGH = 2_000;

  /** So many lines before a heading are looked through for a place to begin at. */
  private static final int PREAMBLE = 60;

  /** What stands behind such a row is no table. */
  private static final String TOO_LONG = "row too long";

  /** The delimiter by which most cells are times and numbers. */
  static Optional<LogTable> of(SourceFile file, Charset charset) {
    FileText text = Tables.text(file, Optional.of(charset));
    return Stream.of(',', ';', '\t')
        .flatMap(delimiter -> with(file.name(), text, charset, delimiter).stream())
        .max(Comparator.comparing(LogTable::cellsRead).thenComparing(LogTable::width));
  }

  /** Lines before the heading may hold what is no table; the search goes on behind them. */
  private static Optional<LogTable> with(
      String name, FileText text, Charset charset, char delimiter) {
    Optional<LogTable> found = Optional.empty();
    int before = -1;
    int skip = 0;
    while (found.isEmpty() && before < skip && skip <= PREAMBLE) {
      First first = new First();
      Layout layout = new Layout(Optional.of(charset), Optional.of(delimiter), skip);
      List<Fault> faults = Tables.read(name, text, layout, first);
      found = new TableSearch(first.rows, layout).table();
      before = skip;
      skip =
          faults.stream()
              .filter(fault -> fault.is(Severity.BROKEN) && !fault.rule().equals(TOO_LONG))
              .mapToInt(fault -> fault.place().line())
              .findFirst()
              .orElse(0);
    }
    return found;
  }

  /** The first rows of a file, the one that stands as the heading among them. */
  private static final class First implements Rows {
    private final List<Row> rows = new ArrayList<>();

    @Override
    public void heading(Row heading, char delimiter) {
      row(heading);
    }

    @Override
    public void row(Row row) {
      if (!row.isBlank()) {
        rows.add(row);
      }
    }

    @Override
    public boolean haveEnough() {
      return rows.size() >= ENOUGH;
    }
  }

  /** How many more cells are numbers, and times above all, than anything else. */
  private int cellsRead() {
    return sample.stream()
        .flatMap(row -> Cells.filled(row).stream())
        .mapToInt(cell -> WrittenTime.of(cell).isPresent() ? 2 : Cells.isNumber(cell) ? 1 : -1)
        .sum();
  }

  int width() {
    return heading.cells().size();
  }

  char delimiter() {
    return layout.delimiter().orElseThrow();
  }

  /** What is known of a column by its word, its label and its unit. */
  Stream<String> said(int index) {
    return Stream.of(heading, labels, units).map(row -> row.cell(index));
  }

  /**
   * Whether whole numbers stand by twos under one word each, as decimal commas do in a file that is
   * parted by commas: then no cell can be believed.
   */
  boolean hasBareCommas() {
    List<Row> wide = sample.stream().filter(this::isWide).toList();
    return delimiter() == ','
        && !labels.cells().isEmpty()
        && wide.size() * 2 > sample.size()
        && wide.stream()
            .allMatch(row -> row.cells().stream().noneMatch(cell -> cell.matches("\\d+\\.\\d+")))
        && wide.stream().allMatch(row -> row.cell(row.cells().size() - 1).matches("\\d+"));
  }

  private boolean isWide(Row row) {
    return IntStream.range(0, row.cells().size())
        .anyMatch(index -> !row.cell(index).isEmpty() && index >= labels.cells().size());
  }
}
