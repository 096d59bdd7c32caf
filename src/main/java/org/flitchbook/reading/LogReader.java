package org.flitchbook.reading;

import static org.flitchbook.message.Message.say;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.input.Severity;
import org.flitchbook.input.SourceFile;
import org.flitchbook.measure.Unit;
import org.flitchbook.message.Message;
import org.flitchbook.practice.Practice;
import org.flitchbook.table.Row;
import org.flitchbook.table.Rows;
import org.flitchbook.table.Tables;

/** Reads the rows of one probe log as its layout states. */
final class LogReader implements Rows {

  private final String name;
  private final LogsFile.LogLayout layout;
  private final char decimalMark;
  private final List<Fault> faults = new ArrayList<>();
  private final RowFaults rowFaults;
  private final LogRows read;
  private final TimelessRows timeless;
  private final OddCells odd;
  private final OtherColumns others;
  private final List<Integer> parts = new ArrayList<>(List.of(0));
  private Row heading = new Row(0, List.of());

  private LogColumns columns = LogColumns.NONE;

  /** The columns that no heading has had yet. */
  private Map<String, Fault> lacking = Map.of();

  private boolean readable;
  private int widest;
  private char delimiter;
  private int rows;
  private int places;

  private LogReader(String name, LogsFile.LogLayout layout) {
    this.name = name;
    this.layout = layout;
    this.decimalMark = layout.log().decimal();
    this.rowFaults = new RowFaults(name);
    this.read = new LogRows(layout.columns().size());
    this.timeless = new TimelessRows(layout, rowFaults);
    this.odd = new OddCells(layout.columns(), decimalMark);
    this.others = new OtherColumns(layout.log().leftOut());
  }

  /**
   * Reads a log.
   *
   * @param fitting the layouts that name it, of which the first counts
   * @param last the last time that the log can have
   */
  static FileRead.Content read(
      SourceFile file, List<LogsFile.LogLayout> fitting, Practice practice, Instant last) {
    LogReader reader = new LogReader(file.name(), fitting.get(0));
    fitting.stream().skip(1).map(reader::namedTwice).forEach(reader.faults::add);
    reader.faults.addAll(Tables.read(file, reader.layout.log().table(), reader));
    reader.timeless.end();
    reader.checkWidth();
    LogSeries made = reader.inOrder(practice);
    reader.faults.addAll(reader.lacking.values());
    boolean isRead = reader.readable && reader.lacking.isEmpty();
    if (!isRead) {
      boolean isLikeTable = reader.heading.cells().size() > 1;
      Tables.otherFormat(file, isLikeTable)
          .filter(other -> !reader.faults.contains(other))
          .ifPresent(reader::isNoTable);
    }
    List<Series> series = isRead ? made.make(last) : List.of();
    reader.faults.addAll(reader.rowFaults.faults());
    if (isRead) {
      reader.faults.addAll(reader.others.faults(Place.of(file.name(), reader.heading.line())));
    }
    return new FileRead.Content(
        FileRead.of(file, "log", reader.rows, made.used().cardinality()),
        List.of(),
        series,
        reader.faults);
  }

  private Fault namedTwice(LogsFile.LogLayout other) {
    return Fault.broken(
        "log named twice",
        other.log().object().place(),
        say(
            "reading.named-twice.found",
            "{0}, which {1} names too",
            name.substring(name.lastIndexOf('/') + 1),
            layout.log().object().place().column()),
        say("reading.named-twice.expected", "one entry for each file"));
  }

  /** What it is says more than which columns it has not. */
  private void isNoTable(Fault what) {
    faults.removeIf(fault -> fault.rule().equals(LogColumns.MISSING));
    faults.add(what);
  }

  private LogSeries inOrder(Practice practice) {
    long precision = layout.clock().precisionMillis(places);
    ReadLog log = new ReadLog(name, layout, practice, precision, read, rowFaults);
    LogSeries series = new LogSeries(log, new RowOrder(log, read, parts).inOrder());
    odd.tell(log);
    return series;
  }

  @Override
  public void heading(Row first, char mark) {
    delimiter = mark;
    boolean headed = isHeaded();
    heading = headed ? first : LogColumns.numbers(first, layout.log());
    columns = LogColumns.of(name, heading, layout);
    faults.addAll(columns.faults());
    readable = columns.faults().isEmpty();
    lacking = readable ? new LinkedHashMap<>(columns.lacking()) : Map.of();
    if (!headed) {
      row(first);
    } else if (readable) {
      units(first);
      times(first);
    }
  }

  /** Without a heading a column that no row has is missing, too. */
  private void checkWidth() {
    if (!isHeaded() && widest < heading.cells().size()) {
      Row numbers = new Row(heading.line(), heading.cells().subList(0, widest));
      lacking = LogColumns.of(name, numbers, layout).lacking();
    }
  }

  private boolean isHeaded() {
    return layout.log().heading().isEmpty();
  }

  /** A row with a time is no heading, and those above it are readings; a number names a channel. */
  private void times(Row words) {
    LogClock clock = layout.clock();
    boolean isNamedSo =
        clock instanceof WrittenClock
            && words.cells().stream().anyMatch(word -> clock.read(word).isPresent());
    if (isNamedSo || clock.read(columns.timeText(words)).isPresent()) {
      stop(
          "heading",
          words,
          layout.time().column(),
          say("reading.log.time-in-heading", "a time in the heading"),
          say(
              "reading.log.words-above",
              "words above the times and readings; \"skip\" is too large?"));
    }
  }

  @Override
  public void skipped(Row row) {
    if (readable
        && layout.clock().read(columns.timeText(row)).isPresent()
        && columns.valuesOf(row).anyMatch(cell -> timeless.isReading(cell, false))) {
      stop(
          "skipped reading",
          row,
          "",
          Message.of(String.join(", ", row.cells())),
          say("reading.log.none-skipped", "no readings in the lines that \"skip\" passes over"));
    }
  }

  /** A scale named in the file against the one stated: either may be the wrong one. */
  private void units(Row words) {
    for (int i = 0; i < layout.columns().size(); i++) {
      Series column = layout.columns().get(i).series();
      String word = columns.value(words, i);
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
    widest = Math.max(widest, row.cells().size());
    if (!readable) {
      return;
    }
    if (isHeaded() && row.cells().containsAll(layout.time().columns().all())) {
      headingAgain(row);
    } else if (!columns.faults().isEmpty()) {
      stop(
          "heading again",
          row,
          "",
          say("reading.log.lacking-column", "a row under a heading that lacks a column"),
          once());
    } else if (columns.isTooNarrowFor(row) && !timeless.isLabel(columns.timeText(row))) {
      tooWide(row);
    } else {
      reading(row);
    }
  }

  /** A heading in the middle begins another part; its words may stand in another order. */
  private void headingAgain(Row row) {
    timeless.headingFollows();
    columns = LogColumns.of(name, row, layout);
    lacking.keySet().retainAll(columns.lacking().keySet());
    Optional<Fault> unreadable = columns.faults().stream().findFirst();
    rowFaults.add(
        "heading again",
        unreadable.isEmpty() ? Severity.NOTE : Severity.STOP,
        row.line(),
        "",
        unreadable.map(Fault::found).orElse(Message.of(String.join(", ", row.cells()))),
        once());
    parts.add(read.size());
  }

  private Message once() {
    return say("reading.log.heading-once", "the heading once, on line {0}", heading.line());
  }

  private void reading(Row row) {
    String text = columns.timeText(row);
    OptionalLong time = layout.clock().read(text);
    if (time.isEmpty()) {
      if (!timeless.reads(row, columns)) {
        units(row);
      }
      timeless.add(row, columns);
      return;
    }
    timeless.timeFollows(heading);
    places = Math.max(places, Numbers.places(text, decimalMark));
    long[] levels = new long[layout.columns().size()];
    for (int column = 0; column < levels.length; column++) {
      levels[column] = odd.level(read.size(), column, columns.value(row, column));
    }
    read.add(time.getAsLong(), row.line(), levels);
    others.take(row, columns.others());
  }

  /** A bare decimal comma shifts every cell to its right, so no cell of the row can be believed. */
  private void tooWide(Row row) {
    Message expected =
        say("reading.log.no-nameless", "no filled cell under no word of the heading");
    stop(
        "row too wide",
        row,
        "",
        Message.of(String.join(", ", row.cells())),
        Numbers.noBareComma(delimiter, expected));
  }

  private void stop(String rule, Row row, String column, Message found, Message expected) {
    rowFaults.add(rule, Severity.STOP, row.line(), column, found, expected);
  }
}
