package org.flitchbook.reading;

import java.math.BigDecimal;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.input.Severity;
import org.flitchbook.input.SourceFile;
import org.flitchbook.measure.Level;
import org.flitchbook.table.Row;
import org.flitchbook.table.Rows;
import org.flitchbook.table.Tables;

/** Reads one probe log as its layout states. */
final class LogReader implements Rows {

  /** A column of values while it is being read. */
  private record Reading(LogLayout.ValueColumn column, int index, LoggedSamples samples) {}

  private final String name;
  private final LogLayout layout;
  private final List<Fault> faults;
  private final RowFaults rowFaults;
  private final List<Integer> timeColumns = new ArrayList<>();
  private final List<Reading> readings = new ArrayList<>();
  private final Map<LocalDateTime, List<ZoneOffset>> offsetsOfMinute = new HashMap<>();
  private boolean complete = true;
  private boolean byComma;
  private int width;
  private int rows;
  private int used;
  private long lastAt = Long.MIN_VALUE;
  private Row lastRow = new Row(0, List.of());

  private LogReader(String name, LogLayout layout, List<Fault> faults) {
    this.name = name;
    this.layout = layout;
    this.faults = faults;
    this.rowFaults = new RowFaults(name);
  }

  static FileRead read(SourceFile file, LogLayout layout, List<Series> series, List<Fault> faults) {
    LogReader reader = new LogReader(file.name(), layout, faults);
    faults.addAll(Tables.read(file.name(), file.bytes(), layout.layout(), reader));
    faults.addAll(reader.rowFaults.faults());
    reader.readings.forEach(reading -> series.add(reader.series(reading)));
    return new FileRead(
        file.name(), "log", file.content().remaining(), file.sha256(), reader.rows, reader.used);
  }

  private Series series(Reading reading) {
    LogLayout.ValueColumn column = reading.column();
    return new Series(
        name,
        column.column(),
        column.what(),
        column.item(),
        column.lots(),
        column.placeId(),
        layout.instrument(),
        column.unit(),
        layout.time().clock().precisionMillis(),
        reading.samples());
  }

  @Override
  public void heading(Row heading, char delimiter) {
    byComma = delimiter == ',';
    for (int index = 0; index < heading.cells().size(); index++) {
      width = heading.cell(index).isEmpty() ? width : index + 1;
    }
    for (String column : layout.time().columns()) {
      index(heading, column).ifPresent(timeColumns::add);
    }
    for (LogLayout.ValueColumn column : layout.columns()) {
      index(heading, column.column())
          .ifPresent(index -> readings.add(new Reading(column, index, new LoggedSamples())));
    }
  }

  private Optional<Integer> index(Row heading, String column) {
    int index = heading.cells().indexOf(column);
    if (index < 0) {
      String words = String.join(", ", heading.cells());
      broken(
          "missing column",
          heading.line(),
          column,
          "no column \"" + column + "\" in " + words,
          "the columns that logs.json names");
    } else if (heading.cells().lastIndexOf(column) != index) {
      String twice = "the column \"" + column + "\" twice";
      broken("column twice", heading.line(), column, twice, "each column once");
    }
    return index < 0 ? Optional.empty() : Optional.of(index);
  }

  private void broken(String rule, int line, String column, String found, String expected) {
    complete = false;
    faults.add(Fault.broken(rule, Place.of(name, line).column(column), found, expected));
  }

  @Override
  public void row(Row row) {
    rows++;
    if (!complete) {
      return;
    }
    if (!row.cellsUnder(index -> index >= width).isEmpty()) {
      tooWide(row);
      return;
    }
    String text = timeText(row);
    Optional<LocalDateTime> time = layout.time().clock().read(text);
    if (time.isEmpty()) {
      noTime(row, text);
      return;
    }
    List<ZoneOffset> offsets = offsets(time.get());
    if (offsets.size() != 1) {
      noSingleTime(row.line(), text, offsets);
      return;
    }
    inOrder(row, time.get(), time.get().toInstant(offsets.get(0)).toEpochMilli());
  }

  /**
   * A heading again, a row of units or a last line holds no reading, so nothing is lost with it.
   */
  private void noTime(Row row, String text) {
    boolean reads =
        readings.stream()
            .map(reading -> Numbers.read(row.cell(reading.index()), layout.decimalMark()))
            .anyMatch(Optional::isPresent);
    rowFaults.add(
        reads ? "time" : "no reading",
        reads ? Severity.STOP : Severity.NOTE,
        row.line(),
        timeColumn(),
        text.isEmpty() ? "no time" : text,
        layout.time().clock().pattern());
  }

  /** A bare decimal comma shifts every cell to its right, so no cell of the row can be believed. */
  private void tooWide(Row row) {
    stop(
        "row too wide",
        row.line(),
        "",
        String.join(", ", row.cells()),
        "no filled cell under no word of the heading"
            + (byComma ? "; a decimal comma can't stand bare in a comma file" : ""));
  }

  private String timeText(Row row) {
    if (timeColumns.size() == 1) {
      return row.cell(timeColumns.get(0));
    }
    return String.join(" ", timeColumns.stream().map(row::cell).toList()).strip();
  }

  /** The zone's rules change at whole minutes. */
  private List<ZoneOffset> offsets(LocalDateTime time) {
    return offsetsOfMinute.computeIfAbsent(
        time.truncatedTo(ChronoUnit.MINUTES),
        minute -> layout.zone().getRules().getValidOffsets(minute));
  }

  private void noSingleTime(int line, String text, List<ZoneOffset> offsets) {
    if (offsets.isEmpty()) {
      stop(
          "spring clock change",
          line,
          text + ", which the clock skipped in " + layout.zone(),
          "a time that was on the clock");
    } else {
      stop(
          "autumn clock change",
          line,
          text + ", which the clock showed twice in " + layout.zone(),
          "times with one meaning");
    }
  }

  private void inOrder(Row row, LocalDateTime time, long at) {
    if (at > lastAt) {
      use(row, time, at);
      lastAt = at;
      lastRow = row;
    } else if (at == lastAt && row.cells().equals(lastRow.cells())) {
      rowFaults.add(
          "same row twice", Severity.NOTE, row.line(), "", "the row before once more", "each once");
    } else if (at == lastAt) {
      stop("time twice", row.line(), timeText(row) + " with other values", "one row a time");
    } else {
      stop(
          "time goes back",
          row.line(),
          timeText(row) + " behind " + timeText(lastRow),
          "a later time");
    }
  }

  private void use(Row row, LocalDateTime time, long at) {
    List<Reading> holding =
        readings.stream().filter(reading -> reading.column().holdsAt(time)).toList();
    boolean any = false;
    for (Reading reading : holding) {
      any |= value(row, reading, at);
    }
    used += any ? 1 : 0;
    if (holding.isEmpty()) {
      String expected = "a time that a \"from\" and \"until\" of logs.json holds";
      rowFaults.add(
          "row outside", Severity.NOTE, row.line(), timeColumn(), timeText(row), expected);
    }
  }

  private boolean value(Row row, Reading reading, long at) {
    String text = row.cell(reading.index());
    if (text.isEmpty()) {
      return false;
    }
    Optional<BigDecimal> number = Numbers.read(text, layout.decimalMark());
    if (number.isEmpty()) {
      rowFaults.add(
          "no value", Severity.NOTE, row.line(), reading.column().column(), text, "a number");
      return false;
    }
    OptionalLong level = Level.of(number.get(), reading.column().unit());
    if (level.isEmpty()) {
      stop("value", row.line(), reading.column().column(), text, AmountReader.LEVEL);
      return false;
    }
    reading.samples().add(at, level.getAsLong(), row.line());
    return true;
  }

  private void stop(String rule, int line, String found, String expected) {
    stop(rule, line, timeColumn(), found, expected);
  }

  private String timeColumn() {
    return String.join(" ", layout.time().columns());
  }

  private void stop(String rule, int line, String column, String found, String expected) {
    rowFaults.add(rule, Severity.STOP, line, column, found, expected);
  }
}
