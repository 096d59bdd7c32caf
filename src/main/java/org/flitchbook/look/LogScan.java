package org.flitchbook.look;

import static org.flitchbook.message.Message.say;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.measure.Unit;
import org.flitchbook.message.Message;
import org.flitchbook.reading.Readings;
import org.flitchbook.table.Row;
import org.flitchbook.table.Rows;

/** All rows of a log, looked through once. */
final class LogScan implements Rows {

  /** What may be odd about a row. */
  enum Oddity {
    HEADING_AGAIN(say("look.odd.heading", "the heading again")),
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

  final List<LogColumn> columns;
  final Optional<TimeColumn> time;

  /** The odd rows, in the order of their kinds. */
  final Map<Oddity, Lines> odd = new EnumMap<>(Oddity.class);

  private final Row heading;
  private Row units = new Row(0, List.of());
  private Row before = new Row(0, List.of());
  private int rows;

  LogScan(LogTable table) {
    heading = table.heading();
    columns = heading.cells().stream().map(LogColumn::new).toList();
    time = TimeColumn.of(table);
  }

  @Override
  public void heading(Row words, char delimiter) {}

  @Override
  public void row(Row row) {
    rows++;
    if (row.cells().equals(heading.cells())) {
      add(Oddity.HEADING_AGAIN, row);
    } else if (Cells.isUnits(row) && !Cells.isData(row)) {
      units = odd.containsKey(Oddity.UNITS) ? units : row;
      add(Oddity.UNITS, row);
    } else {
      read(row, time.map(each -> each.text(row)).orElse(""));
    }
    before = row;
  }

  private void add(Oddity oddity, Row row) {
    odd.merge(oddity, new Lines(row.line(), 1), (one, more) -> new Lines(one.first, one.count + 1));
  }

  private void read(Row row, String text) {
    if (row.cells().equals(before.cells())) {
      add(Oddity.TWICE, row);
    } else if (!text.isEmpty() && time.filter(each -> each.text(before).equals(text)).isPresent()) {
      add(Oddity.OTHER_VALUES, row);
    }
    if (text.isEmpty() && time.isPresent()) {
      add(Oddity.WITHOUT_TIME, row);
    }
    if (!row.cellsUnder(index -> index >= columns.size()).isEmpty()) {
      add(Oddity.WIDE, row);
    }
    time.ifPresent(each -> each.take(row));
    for (int index = 0; index < columns.size(); index++) {
      columns.get(index).take(row.cell(index));
    }
  }

  int rows() {
    return rows;
  }

  boolean isOfTime(int index) {
    return time.filter(each -> each.columns.contains(index)).isPresent();
  }

  /** The scale that the heading or a row of units names for a column. */
  Optional<String> unit(int index) {
    return Stream.of(columns.get(index).word, units.cell(index))
        .flatMap(
            text ->
                Readings.scaleIn(text)
                    .map(Unit::symbol)
                    .or(() -> Optional.of("%").filter(text::contains))
                    .stream())
        .findFirst();
  }

  /** The decimal marks that stand in numbers other than times. */
  List<String> decimalMarks() {
    Set<String> found =
        IntStream.range(0, columns.size())
            .filter(index -> !isOfTime(index))
            .mapToObj(index -> columns.get(index).marks)
            .flatMap(Set::stream)
            .collect(Collectors.toSet());
    return Stream.of(".", ",").filter(found::contains).toList();
  }
}
