package org.flitchbook.look;

import static org.flitchbook.message.Message.say;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.message.Message;
import org.flitchbook.table.Row;
import org.flitchbook.table.Rows;

/** All rows of a log, looked through once. */
final class LogScan implements Rows {

  /** What may be odd about a row. */
  enum Oddity {
    HEADING_AGAIN(say("look.odd.heading", "the heading again")),
    PART(say("look.odd.part", "another heading, with other columns under it")),
    UNITS(say("look.odd.units", "a row of units")),
    WITHOUT_TIME(say("look.odd.without-time", "a row without a time")),
    TWICE(say("look.odd.twice", "the row before once more")),
    OTHER_VALUES(say("look.odd.other-values", "the time of the row before with other values")),
    WIDE(say("look.odd.wide", "more cells than the heading has words"));

    final Message words;

    Oddity(Message words) {
      this.words = words;
    }
  }

  /** Rows of one kind: how many, and where the first stands. */
  record Lines(int first, int count) {}

  /** Each column once, in the order in which their words came. */
  final List<LogColumn> columns = new ArrayList<>();

  final Optional<TimeColumn> time;

  /** The odd rows, in the order of their kinds. */
  final Map<Oddity, Lines> odd = new EnumMap<>(Oddity.class);

  private final LogTable table;

  /** The columns of the part that is being read, by their places. */
  private List<LogColumn> part;

  private Row before = new Row(0, List.of());
  private int rows;

  LogScan(LogTable table) {
    this.table = table;
    this.part =
        IntStream.range(0, table.width())
            .mapToObj(
                index ->
                    new LogColumn(
                        table.heading().cell(index),
                        table.said(index).collect(Collectors.joining(" "))))
            .toList();
    columns.addAll(part);
    time = new TimeSearch(table).time();
  }

  /** Without a heading the first row is one like the others. */
  @Override
  public void heading(Row words, char delimiter) {
    if (!table.headed()) {
      row(words);
    }
  }

  @Override
  public void row(Row row) {
    rows++;
    if (table.headed() && row.cells().equals(table.heading().cells())) {
      add(Oddity.HEADING_AGAIN, row);
      begin(row);
    } else if (isHeading(row)) {
      add(Oddity.PART, row);
      begin(row);
    } else {
      data(row, time.map(each -> each.text(row)).orElse(""));
    }
    before = row;
  }

  /** As the reader of logs knows another heading: by the words of the time. */
  private boolean isHeading(Row row) {
    return table.headed()
        && time.filter(each -> row.cells().containsAll(each.words(table))).isPresent();
  }

  private void begin(Row heading) {
    part = heading.cells().stream().map(this::called).toList();
    time.ifPresent(
        each -> each.moveTo(each.words(table).stream().map(heading.cells()::indexOf).toList()));
  }

  private LogColumn called(String word) {
    Optional<LogColumn> known =
        columns.stream().filter(column -> column.word.equals(word)).findFirst();
    LogColumn column = known.orElseGet(() -> new LogColumn(word, word));
    if (known.isEmpty()) {
      columns.add(column);
    }
    return column;
  }

  private void add(Oddity oddity, Row row) {
    odd.merge(oddity, new Lines(row.line(), 1), (one, more) -> new Lines(one.first, one.count + 1));
  }

  private void data(Row row, String text) {
    if (!Cells.hasDigit(text) && Cells.isUnits(row)) {
      add(Oddity.UNITS, row);
      return;
    }
    boolean timed = time.filter(each -> each.take(row)).isPresent();
    if (row.cells().equals(before.cells())) {
      add(Oddity.TWICE, row);
    } else if (!text.isEmpty() && time.filter(each -> each.text(before).equals(text)).isPresent()) {
      add(Oddity.OTHER_VALUES, row);
    }
    if (text.isEmpty() && time.isPresent()) {
      add(Oddity.WITHOUT_TIME, row);
    }
    if (!row.cellsUnder(index -> index >= part.size()).isEmpty()) {
      add(Oddity.WIDE, row);
    }
    if (timed || time.isEmpty()) {
      IntStream.range(0, part.size()).forEach(index -> part.get(index).take(row.cell(index)));
    }
  }

  int rows() {
    return rows;
  }

  boolean isOfTime(LogColumn column) {
    int index = columns.indexOf(column);
    return index < table.width()
        && time.filter(each -> each.words(table).contains(column.word)).isPresent();
  }

  /** Whether a column is one of those that an entry is proposed for. */
  boolean mayHoldReadings(LogColumn column) {
    return !isOfTime(column) && !column.word.isEmpty() && column.mayHoldReadings();
  }

  /**
   * Whether decimal commas may have parted numbers in two, since no words tell how many are one.
   */
  boolean mayHaveBareCommas() {
    return !table.headed()
        && table.delimiter() == ','
        && decimalMarks().isEmpty()
        && columns.stream().filter(this::mayHoldReadings).filter(each -> each.numbers > 0).count()
            > 1;
  }

  /** The decimal marks that stand in numbers other than times. */
  List<String> decimalMarks() {
    Set<String> found =
        columns.stream()
            .filter(column -> !isOfTime(column))
            .flatMap(column -> column.marks.stream())
            .collect(Collectors.toSet());
    return Stream.of(".", ",").filter(found::contains).toList();
  }
}
