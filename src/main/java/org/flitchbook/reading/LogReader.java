package org.flitchbook.reading;

import static org.flitchbook.message.Message.say;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Severity;
import org.flitchbook.input.SourceFile;
import org.flitchbook.measure.Level;
import org.flitchbook.measure.Unit;
import org.flitchbook.message.Message;
import org.flitchbook.practice.Practice;
import org.flitchbook.table.Row;
import org.flitchbook.table.Rows;
import org.flitchbook.table.Tables;

/** Reads the rows of one probe log as its layout states. */
final class LogReader implements Rows {

  private final String name;
  private final LogLayout layout;
  private final Practice practice;
  private final LogClock clock;
  private final List<Fault> faults;
  private final RowFaults rowFaults;
  private final LogRows read;
  private final List<Integer> parts = new ArrayList<>(List.of(0));
  private Row heading = new Row(0, List.of());
  private Optional<LogColumns> columns = Optional.empty();
  private boolean readable;
  private boolean byComma;
  private int rows;
  private int places;

  private LogReader(String name, LogLayout layout, Practice practice, List<Fault> faults) {
    this.name = name;
    this.layout = layout;
    this.practice = practice;
    this.clock = layout.time().clock();
    this.faults = faults;
    this.rowFaults = new RowFaults(name);
    this.read = new LogRows(layout.columns().size());
  }

  /**
   * Reads a log; what can't be used of it is added to the faults.
   *
   * @param last the last time that the log can have
   */
  static FileRead read(
      SourceFile file,
      LogLayout layout,
      Practice practice,
      Instant last,
      List<Series> series,
      List<Fault> faults) {
    LogReader reader = new LogReader(file.name(), layout, practice, faults);
    faults.addAll(Tables.read(file, layout.layout(), reader));
    int used = reader.readable ? reader.finish(last, series) : 0;
    faults.addAll(reader.rowFaults.faults());
    return new FileRead(
        file.name(), "log", file.content().remaining(), file.sha256(), reader.rows, used);
  }

  private int finish(Instant last, List<Series> series) {
    long precision = clock.precisionMillis(places);
    Chosen inOrder =
        new RowOrder(layout.time(), practice, precision, rowFaults, read, parts).inOrder();
    return new LogSeries(name, layout, precision, read, rowFaults).make(inOrder, last, series);
  }

  @Override
  public void heading(Row words, char delimiter) {
    byComma = delimiter == ',';
    heading = words;
    columns = LogColumns.of(name, words, layout, faults);
    readable = columns.isPresent();
    columns.ifPresent(found -> units(words, found));
  }

  /** A scale named in the file against the one stated: either may be the wrong one. */
  private void units(Row words, LogColumns found) {
    for (int i = 0; i < layout.columns().size(); i++) {
      LogLayout.ValueColumn column = layout.columns().get(i);
      String word = found.value(words, i);
      Optional<Unit> named = UnitWord.against(column.unit(), word);
      if (named.isPresent()) {
        rowFaults.add(
            "unit",
            Severity.ASK,
            words.line(),
            column.column(),
            say("reading.log.unit-in", "{0} in \"{1}\"", named.get(), word),
            say("reading.log.unit-stated", "{0} as logs.json says", column.unit()));
      }
    }
  }

  @Override
  public void row(Row row) {
    rows++;
    if (!readable) {
      return;
    }
    if (row.cells().containsAll(layout.time().columns())) {
      headingAgain(row);
    } else if (columns.isEmpty()) {
      stop(
          "heading again",
          row.line(),
          "",
          say("reading.log.lacking-column", "a row under a heading that lacks a column"),
          once());
    } else {
      row(row, columns.get());
    }
  }

  /** A heading in the middle begins another part; its words may stand in another order. */
  private void headingAgain(Row row) {
    List<Fault> lacking = new ArrayList<>();
    columns = LogColumns.of(name, row, layout, lacking);
    rowFaults.add(
        "heading again",
        lacking.isEmpty() ? Severity.NOTE : Severity.STOP,
        row.line(),
        "",
        lacking.isEmpty() ? Message.of(String.join(", ", row.cells())) : lacking.get(0).found(),
        once());
    parts.add(read.size());
  }

  private Message once() {
    return say("reading.log.heading-once", "the heading once, on line {0}", heading.line());
  }

  private void row(Row row, LogColumns under) {
    if (under.isTooNarrowFor(row)) {
      tooWide(row);
      return;
    }
    String text = under.timeText(row);
    OptionalLong time = clock.read(text);
    if (time.isEmpty()) {
      noTime(row, text, under);
      return;
    }
    places = Math.max(places, Numbers.places(text, layout.decimalMark()));
    long[] levels = new long[layout.columns().size()];
    for (int column = 0; column < levels.length; column++) {
      levels[column] = level(row, under, column);
    }
    read.add(time.getAsLong(), row.line(), levels);
  }

  /** A row of units or a last line holds no reading, so nothing is lost with it. */
  private void noTime(Row row, String text, LogColumns under) {
    boolean reads = false;
    for (int column = 0; column < layout.columns().size(); column++) {
      reads |= Numbers.read(under.value(row, column), layout.decimalMark()).isPresent();
    }
    if (!reads) {
      units(row, under);
    }
    rowFaults.add(
        reads ? "time" : "no reading",
        reads ? Severity.STOP : Severity.NOTE,
        row.line(),
        layout.time().column(),
        text.isEmpty() ? say("reading.time.none", "no time") : Message.of(text),
        reads ? hinted(clock.expected(), Hints.ofTime(text, clock)) : clock.expected());
  }

  /** A bare decimal comma shifts every cell to its right, so no cell of the row can be believed. */
  private void tooWide(Row row) {
    stop(
        "row too wide",
        row.line(),
        "",
        Message.of(String.join(", ", row.cells())),
        byComma
            ? say(
                "reading.row.bare-comma",
                "{0}; a decimal comma can't stand bare in a comma file",
                say("reading.log.no-nameless", "no filled cell under no word of the heading"))
            : say("reading.log.no-nameless", "no filled cell under no word of the heading"));
  }

  private static Message hinted(Message expected, Optional<Message> hint) {
    return hint.map(more -> say("reading.log.hinted", "{0}; {1}", expected, more)).orElse(expected);
  }

  private long level(Row row, LogColumns under, int index) {
    LogLayout.ValueColumn column = layout.columns().get(index);
    String text = under.value(row, index);
    if (text.isEmpty()) {
      return LogRows.NONE;
    }
    Optional<BigDecimal> number = Numbers.read(text, layout.decimalMark());
    if (number.isEmpty()) {
      Message expected =
          hinted(say("reading.log.number", "a number"), Hints.ofNumber(text, layout.decimalMark()));
      rowFaults.add(
          "no value", Severity.NOTE, row.line(), column.column(), Message.of(text), expected);
      return LogRows.NONE;
    }
    OptionalLong level = Level.of(number.get(), column.unit());
    if (level.isEmpty()) {
      stop("value", row.line(), column.column(), Message.of(text), AmountReader.LEVEL);
    }
    return level.orElse(LogRows.NONE);
  }

  private void stop(String rule, int line, String column, Message found, Message expected) {
    rowFaults.add(rule, Severity.STOP, line, column, found, expected);
  }
}
