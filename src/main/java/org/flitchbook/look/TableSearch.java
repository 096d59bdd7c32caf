package org.flitchbook.look;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.flitchbook.table.Layout;
import org.flitchbook.table.Row;

/**
 * Finds the first row of data and the heading above it. A row is data if a time stands where most
 * rows have theirs, whatever else it holds: one without a reading is no heading.
 */
record TableSearch(List<Row> rows, Layout layout) {

  /** So many rows behind the first one are looked at. */
  private static final int NEXT = 5;

  /** In a column of counts or times; that of the most rows. */
  private record Anchor(int index, Predicate<String> kind) {

    boolean holds(Row row) {
      return kind.test(row.cell(index));
    }

    /** Whether a time or a number stands anywhere in a row. */
    boolean isLike(Row row) {
      return row.cells().stream().anyMatch(kind);
    }
  }

  Optional<LogTable> table() {
    Optional<Anchor> anchor = anchor();
    if (anchor.isEmpty()) {
      return Optional.empty();
    }
    List<Row> data = rows.stream().filter(anchor.get()::holds).toList();
    boolean words = isOfWords(usual(data, TableSearch::firstFilled));
    return IntStream.range(0, rows.size())
        .filter(index -> anchor.get().holds(rows.get(index)))
        .filter(index -> isOfWords(firstFilled(rows.get(index))) == words)
        .filter(index -> isBeginning(index, anchor.get()))
        .boxed()
        .findFirst()
        .flatMap(index -> table(index, anchor.get()));
  }

  private Optional<Anchor> anchor() {
    Optional<Anchor> time = most(Cells::isTime);
    return time.isPresent() ? time : most(Cells::isNumber);
  }

  /** The column in which most rows of more than one cell hold such a cell, the first of equals. */
  private Optional<Anchor> most(Predicate<String> kind) {
    Map<Integer, Long> counts =
        rows.stream()
            .filter(row -> row.cells().size() > 1)
            .flatMap(
                row ->
                    IntStream.range(0, row.cells().size())
                        .filter(index -> kind.test(row.cell(index)))
                        .boxed())
            .collect(Collectors.groupingBy(Function.identity(), Collectors.counting()));
    return counts.entrySet().stream()
        .max(
            Map.Entry.<Integer, Long>comparingByValue()
                .thenComparing(Map.Entry.comparingByKey(Comparator.reverseOrder())))
        .map(entry -> new Anchor(entry.getKey(), kind));
  }

  private static <T> T usual(List<Row> data, Function<Row, T> what) {
    return data.stream()
        .collect(Collectors.groupingBy(what, Collectors.counting()))
        .entrySet()
        .stream()
        .max(Map.Entry.comparingByValue())
        .orElseThrow()
        .getKey();
  }

  private static String firstFilled(Row row) {
    return Cells.filled(row).get(0);
  }

  private static boolean isOfWords(String cell) {
    return !Cells.isNumber(cell) && !Cells.isTime(cell);
  }

  /** Whether rows of data follow, and not yet a heading. */
  private boolean isBeginning(int index, Anchor anchor) {
    List<Row> next = rows.subList(index, Math.min(rows.size(), index + NEXT + 1));
    long data = next.stream().filter(anchor::isLike).count();
    boolean reading = Cells.filled(rows.get(index)).stream().anyMatch(Cells::isNumber);
    boolean headed = index == 0 || isLabels(rows.get(index - 1));
    boolean heads =
        next.size() > 2 && Cells.isOfWords(next.get(1)) && fits(next.get(1), next.get(2));
    return data * 10 > next.size() * 6L && (reading || (headed && !heads));
  }

  private Optional<LogTable> table(int first, Anchor anchor) {
    List<Row> data = rows.subList(first, rows.size()).stream().filter(anchor::holds).toList();
    boolean reads =
        data.stream()
            .anyMatch(row -> Cells.filled(row).stream().filter(Cells::hasDigit).count() > 1);
    if (!reads) {
      return Optional.empty();
    }
    int above = labels(first);
    Row labels = above >= 0 && isLabels(rows.get(above)) ? rows.get(above) : EMPTY;
    Row unitRow = above < first - 1 ? rows.get(above + 1) : EMPTY;
    boolean headed = tellsApart(labels, data);
    int line = headed ? labels.line() : rows.get(first).line();
    Row heading = headed ? labels : numbers(data);
    Layout behind = new Layout(layout.charset(), layout.delimiter(), line - 1);
    return Optional.of(new LogTable(behind, heading, headed, labels, unitRow, before(line), data));
  }

  private static final Row EMPTY = new Row(0, List.of());

  /**
   * The row of words above the first one of data; rows of units or of a single word may part them.
   */
  private int labels(int first) {
    int above = first - 1;
    while (above > 0
        && (Cells.isUnits(rows.get(above)) || Cells.filled(rows.get(above)).size() < 2)
        && isLabels(rows.get(above - 1))) {
      above--;
    }
    return above;
  }

  private static boolean isLabels(Row row) {
    return Cells.isOfWords(row) && Cells.filled(row).size() > 1;
  }

  /** The columns by their numbers from 1. */
  private static Row numbers(List<Row> data) {
    int width = data.stream().mapToInt(row -> row.cells().size()).max().orElse(0);
    return new Row(0, IntStream.rangeClosed(1, width).mapToObj(String::valueOf).toList());
  }

  /** Whether one word of its own stands above every column that most rows fill. */
  private static boolean tellsApart(Row labels, List<Row> data) {
    List<String> words = Cells.filled(labels);
    return words.size() > 1
        && words.stream().distinct().count() == words.size()
        && data.stream().filter(row -> !fits(labels, row)).count() * 2 <= data.size();
  }

  /** Whether a word stands above each filled cell. */
  private static boolean fits(Row heading, Row data) {
    return Cells.filled(heading).size() > 1
        && IntStream.range(0, data.cells().size())
            .allMatch(index -> data.cell(index).isEmpty() || !heading.cell(index).isEmpty());
  }

  private List<String> before(int line) {
    String delimiter = layout.delimiter().map(String::valueOf).orElseThrow();
    List<String> before = new ArrayList<>();
    rows.stream()
        .filter(row -> row.line() < line)
        .forEach(row -> before.add(String.join(delimiter, row.cells())));
    return before;
  }
}
