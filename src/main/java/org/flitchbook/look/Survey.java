package org.flitchbook.look;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.flitchbook.table.Row;
import org.flitchbook.table.Rows;

/** All rows of a log, looked through once. */
final class Survey implements Rows {

  private final Row heading;
  private final List<Column> columns;
  private final Optional<Clock> clock;
  private final Lines headingAgain = new Lines();
  private final Lines units = new Lines();
  private final Lines withoutTime = new Lines();
  private final Lines twice = new Lines();
  private final Lines otherwise = new Lines();
  private final Lines wide = new Lines();
  private final List<String> unitWords = new ArrayList<>();
  private Row before = new Row(0, List.of());
  private int rows;

  /** Rows of one kind: how many, and where the first stands. */
  static final class Lines {
    private int first;
    private int count;

    private void add(Row row) {
      first = count == 0 ? row.line() : first;
      count++;
    }

    int first() {
      return first;
    }

    int count() {
      return count;
    }
  }

  Survey(Frame frame) {
    heading = frame.heading();
    columns = heading.cells().stream().map(Column::new).toList();
    clock = Clock.of(frame);
  }

  @Override
  public void heading(Row words, char delimiter) {}

  @Override
  public void row(Row row) {
    rows++;
    String time = clock.map(each -> each.text(row)).orElse("");
    if (row.cells().equals(heading.cells())) {
      headingAgain.add(row);
    } else if (Cells.isUnits(row) && !Cells.isData(row)) {
      units.add(row);
      unitWords.addAll(units.count() == 1 ? row.cells() : List.of());
    } else {
      repeated(row, time);
      read(row, time);
    }
    before = row;
  }

  private void repeated(Row row, String time) {
    if (row.cells().equals(before.cells())) {
      twice.add(row);
    } else if (!time.isEmpty()
        && clock.filter(each -> each.text(before).equals(time)).isPresent()) {
      otherwise.add(row);
    }
  }

  private void read(Row row, String time) {
    if (time.isEmpty() && clock.isPresent()) {
      withoutTime.add(row);
    }
    if (!row.cellsUnder(index -> index >= columns.size()).isEmpty()) {
      wide.add(row);
    }
    clock.ifPresent(each -> each.take(row));
    for (int index = 0; index < columns.size(); index++) {
      columns.get(index).take(row.cell(index));
    }
  }

  int rows() {
    return rows;
  }

  List<Column> columns() {
    return columns;
  }

  Optional<Clock> clock() {
    return clock;
  }

  boolean isOfTime(int index) {
    return clock.filter(each -> each.columns().contains(index)).isPresent();
  }

  /** The scale that the heading or a row of units names under it. */
  Optional<String> unit(int index) {
    String word = index < unitWords.size() ? unitWords.get(index) : "";
    return columns.get(index).unit().or(() -> Column.unitIn(word));
  }

  Lines headingAgain() {
    return headingAgain;
  }

  Lines units() {
    return units;
  }

  Lines withoutTime() {
    return withoutTime;
  }

  Lines twice() {
    return twice;
  }

  Lines otherwise() {
    return otherwise;
  }

  Lines wide() {
    return wide;
  }

  /** The decimal mark; empty where both stand in it, or none. */
  Optional<String> decimal() {
    int points = 0;
    int commas = 0;
    for (int index = 0; index < columns.size(); index++) {
      points += isOfTime(index) ? 0 : columns.get(index).points();
      commas += isOfTime(index) ? 0 : columns.get(index).commas();
    }
    if (points == 0 && commas == 0) {
      return Optional.empty();
    }
    return points > 0 && commas > 0 ? Optional.of("? . or ,") : Optional.of(points > 0 ? "." : ",");
  }
}
