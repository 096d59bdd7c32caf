package org.flitchbook.look;

import java.math.BigDecimal;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.flitchbook.reading.LogClock;
import org.flitchbook.reading.Readings;
import org.flitchbook.table.Row;

/**
 * Where the time stands in the rows of a log, by which clocks it can be read, and how it goes on.
 */
final class TimeColumn {

  /** Stands in for the start that a count of seconds, hours and minutes needs. */
  private static final String START = "2050-01-01 00:00";

  /** A clock, as an entry of {@code logs.json} states it, and the times that it has read. */
  static final class Reader {
    final String key;
    final TimeSteps steps = new TimeSteps();
    private final String lenient;
    private String value;
    private Optional<LogClock> clock;

    /**
     * @param lenient what is stated instead once a time needs it
     */
    Reader(String key, String value, String lenient) {
      this.key = key;
      this.value = value;
      this.lenient = lenient;
      this.clock = clock(value);
    }

    private Optional<LogClock> clock(String stated) {
      return Readings.clock(key, stated, START);
    }

    String value() {
      return value;
    }

    private boolean take(String text, int line) {
      OptionalLong at = read(clock, text);
      if (at.isEmpty() && !value.equals(lenient)) {
        Optional<LogClock> other = clock(lenient);
        at = read(other, text);
        if (at.isPresent()) {
          value = lenient;
          clock = other;
        }
      }
      at.ifPresent(time -> steps.take(Math.floorDiv(time + 500, 1000L), line));
      return at.isPresent();
    }

    private OptionalLong read(Optional<LogClock> by, String text) {
      String number = key.equals(PATTERN) ? text : text.replace(',', '.');
      return by.map(each -> each.read(number)).orElse(OptionalLong.empty());
    }
  }

  static final String PATTERN = "pattern";
  static final String ELAPSED = "elapsed";

  final List<Integer> columns;
  String first = "";
  String last = "";

  /** How many cells hold no time. */
  int strange;

  private List<Reader> readers;
  private boolean mixed;

  private TimeColumn(List<Integer> columns, List<Reader> readers) {
    this.columns = columns;
    this.readers = readers;
  }

  /** Finds the time's columns by the first rows; empty where no column grows like a time. */
  static Optional<TimeColumn> of(LogTable table) {
    List<Integer> times =
        IntStream.range(0, table.width()).filter(index -> mostly(table, index)).boxed().toList();
    Optional<Integer> both = first(table, times, true, true);
    Optional<Integer> date = first(table, times, true, false);
    Optional<Integer> clock = first(table, times, false, true);
    if (both.isPresent()) {
      return Optional.of(written(table, List.of(both.get())));
    }
    if (date.isPresent() && clock.isPresent()) {
      return Optional.of(written(table, List.of(date.get(), clock.get())));
    }
    return clock.map(index -> run(table, index)).or(() -> counted(table));
  }

  private static List<WrittenTime> times(LogTable table, List<Integer> columns) {
    return table.sample().stream()
        .flatMap(row -> WrittenTime.of(text(row, columns)).stream())
        .toList();
  }

  private static boolean mostly(LogTable table, int index) {
    long filled = table.sample().stream().filter(row -> !row.cell(index).isEmpty()).count();
    return filled > 0 && times(table, List.of(index)).size() * 10L >= filled * 9;
  }

  private static Optional<Integer> first(
      LogTable table, List<Integer> columns, boolean dated, boolean timed) {
    return columns.stream()
        .filter(index -> times(table, List.of(index)).get(0).isOf(dated, timed))
        .findFirst();
  }

  private static TimeColumn written(LogTable table, List<Integer> columns) {
    List<WrittenTime> sample =
        times(table, columns).stream().filter(time -> time.isOf(true, true)).toList();
    List<Reader> readers =
        WrittenTime.patterns(sample).stream()
            .map(choice -> new Reader(PATTERN, choice.exact(), choice.lenient()))
            .toList();
    return new TimeColumn(columns, readers.isEmpty() ? List.of(reader(PATTERN, "")) : readers);
  }

  private static TimeColumn run(LogTable table, int index) {
    boolean seconds = times(table, List.of(index)).get(0).clock().contains("ss");
    return new TimeColumn(List.of(index), List.of(reader(ELAPSED, seconds ? "h:mm:ss" : "h:mm")));
  }

  private static Reader reader(String key, String value) {
    return new Reader(key, value, value);
  }

  private static Optional<TimeColumn> counted(LogTable table) {
    return IntStream.range(0, table.width())
        .boxed()
        .filter(index -> grows(table, index))
        .min(Comparator.comparing(index -> isCalledSo(table.heading().cell(index)) ? 0 : 1))
        .map(index -> new TimeColumn(List.of(index), List.of(counter(table, index))));
  }

  private static boolean isCalledSo(String word) {
    return word.matches("(?i).*(time|date|zeit|datum|elapsed|stamp|unix|epoch|sec|min).*");
  }

  /** Whether it never falls, or never rises, and changes at all. */
  private static boolean grows(LogTable table, int index) {
    List<BigDecimal> numbers =
        table.sample().stream().flatMap(row -> Cells.number(row.cell(index)).stream()).toList();
    List<Integer> steps =
        IntStream.range(1, numbers.size())
            .mapToObj(i -> numbers.get(i).compareTo(numbers.get(i - 1)))
            .filter(sign -> sign != 0)
            .toList();
    return steps.stream().distinct().count() == 1 && steps.size() > numbers.size() / 2;
  }

  /** By the digits of the first number: those of Unix time, the days of a spreadsheet, or any. */
  private static Reader counter(LogTable table, int index) {
    String whole =
        table.sample().stream()
            .map(row -> row.cell(index).replaceFirst("[.,].*", ""))
            .filter(cell -> !cell.isEmpty())
            .findFirst()
            .orElse("");
    return switch (whole.length()) {
      case 10 -> reader("epoch", "seconds");
      case 13 -> reader("epoch", "milliseconds");
      default ->
          whole.matches("[34]\\d{4}") ? reader("serial", "1899-12-30") : reader(ELAPSED, "seconds");
    };
  }

  void take(Row row) {
    String text = text(row);
    if (text.isEmpty()) {
      return;
    }
    List<Reader> reading = readers.stream().filter(each -> each.take(text, row.line())).toList();
    if (!reading.isEmpty()) {
      readers = reading;
    } else if (!isCounted() && WrittenTime.of(text).isPresent()) {
      mixed = true;
    } else {
      strange++;
      return;
    }
    first = first.isEmpty() ? text : first;
    last = text;
  }

  /** The heading's words for its columns. */
  List<String> words(Row heading) {
    return columns.stream().map(heading::cell).toList();
  }

  String text(Row row) {
    return text(row, columns);
  }

  private static String text(Row row, List<Integer> columns) {
    return columns.stream().map(row::cell).collect(Collectors.joining(" ")).strip();
  }

  /** The reader under which the log is the shortest. */
  Reader reader() {
    return readers.stream().min(Comparator.comparing(each -> each.steps.span())).orElseThrow();
  }

  /** Whether dates and times of day are written out. */
  boolean isWritten() {
    return reader().key.equals(PATTERN);
  }

  /** Whether hours and minutes run are written. */
  boolean isRun() {
    return reader().value().contains(":mm") && !isWritten();
  }

  /** Whether it counts something of which only a person can say what it is. */
  boolean isCount() {
    return reader().key.equals(ELAPSED) && !isRun();
  }

  /** Whether it is a number. */
  boolean isCounted() {
    return !isWritten() && !isRun();
  }

  /** The patterns that read all of its times; more than one where they leave the order open. */
  List<String> patterns() {
    return mixed || !isWritten() ? List.of() : readers.stream().map(Reader::value).toList();
  }

  /** Whether it goes back by half a day and writes neither AM nor PM. */
  boolean lacksHalves() {
    long minutes = reader().steps.backBy / 60;
    return isWritten() && !reader().value().contains("a") && minutes >= 660 && minutes <= 780;
  }
}
