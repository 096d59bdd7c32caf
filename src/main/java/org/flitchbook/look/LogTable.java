package org.flitchbook.look;

import java.nio.charset.Charset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Severity;
import org.flitchbook.input.SourceFile;
import org.flitchbook.table.Layout;
import org.flitchbook.table.Row;
import org.flitchbook.table.Rows;
import org.flitchbook.table.Tables;

/**
 * Where in a file the table stands: what parts its cells, and how many lines come before its
 * heading.
 *
 * @param before the lines before the heading, as they stand there
 * @param sample rows of times and numbers under the heading, of the first
 */
record LogTable(Layout layout, Row heading, List<String> before, List<Row> sample) {

  /** So many rows show what a file is. */
  private static final int ENOUGH = 2_000;

  /** So many lines before a heading are looked through for a place to begin at. */
  private static final int PREAMBLE = 60;

  /** The delimiter by which most rows are as wide as a heading. */
  static Optional<LogTable> of(SourceFile file, Charset charset) {
    return Stream.of(',', ';', '\t')
        .flatMap(delimiter -> with(file, charset, delimiter).stream())
        .max(
            Comparator.comparing((LogTable table) -> table.sample.size())
                .thenComparing(LogTable::width));
  }

  /** Lines before the heading may hold what is no table; the search goes on behind them. */
  private static Optional<LogTable> with(SourceFile file, Charset charset, char delimiter) {
    Optional<LogTable> found = Optional.empty();
    int before = -1;
    int skip = 0;
    while (found.isEmpty() && before < skip && skip <= PREAMBLE) {
      First first = new First();
      Layout layout = new Layout(Optional.of(charset), Optional.of(delimiter), skip);
      List<Fault> faults = Tables.read(file, layout, first);
      found = in(first.rows, layout);
      before = skip;
      skip =
          faults.stream()
              .filter(fault -> fault.is(Severity.BROKEN))
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
      rows.add(heading);
    }

    @Override
    public void row(Row row) {
      rows.add(row);
    }

    @Override
    public boolean haveEnough() {
      return rows.size() >= ENOUGH;
    }
  }

  /** The longest run of rows with times and numbers, and the heading above it. */
  private static Optional<LogTable> in(List<Row> rows, Layout layout) {
    int begin = 0;
    int length = 0;
    int next = 0;
    while (next < rows.size()) {
      int end = endOfRun(rows, next);
      if (end - next > length) {
        begin = next;
        length = end - next;
      }
      next = Math.max(end, next + 1);
    }
    return length == 0 ? Optional.empty() : heading(rows, begin, length, layout);
  }

  private static int endOfRun(List<Row> rows, int begin) {
    int width = rows.get(begin).cells().size();
    int end = begin;
    while (end < rows.size()
        && Cells.isData(rows.get(end))
        && rows.get(end).cells().size() == width) {
      end++;
    }
    return end;
  }

  private static Optional<LogTable> heading(List<Row> rows, int begin, int length, Layout layout) {
    int above = begin - 1;
    if (above > 0
        && Cells.isUnits(rows.get(above))
        && Cells.fits(rows.get(above - 1), rows.get(begin))) {
      above--;
    }
    if (above < 0 || !Cells.fits(rows.get(above), rows.get(begin))) {
      return Optional.empty();
    }
    List<String> words = rows.get(above).cells();
    Row first = rows.stream().filter(row -> row.cells().equals(words)).findFirst().orElseThrow();
    String delimiter = layout.delimiter().map(String::valueOf).orElseThrow();
    List<String> before =
        rows.stream()
            .filter(row -> row.line() < first.line())
            .map(row -> String.join(delimiter, row.cells()))
            .toList();
    Layout behind = new Layout(layout.charset(), layout.delimiter(), first.line() - 1);
    List<Row> sample = List.copyOf(rows.subList(begin, begin + length));
    return Optional.of(new LogTable(behind, first, before, sample));
  }

  int width() {
    return heading.cells().size();
  }

  char delimiter() {
    return layout.delimiter().orElseThrow();
  }
}
