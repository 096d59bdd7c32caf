package org.flitchbook.look;

import java.math.BigDecimal;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Finds the columns of the time by the first rows. A count is the time only where no column looks
 * like dates.
 */
record TimeSearch(LogTable table) {

  /** So many columns may hold year, month, day, hour, minute and second apart. */
  private static final List<Integer> APART = List.of(6, 5);

  Optional<TimeColumn> time() {
    List<Integer> times = columns().filter(index -> isMostlyTime(List.of(index))).toList();
    Optional<Integer> date = first(times, true, false);
    Optional<Integer> clock = first(times, false, true);
    return first(times, true, true)
        .map(List::of)
        .or(() -> date.flatMap(day -> completed(day, clock)))
        .or(this::apart)
        .map(this::written)
        .or(() -> date.or(this::unknown).map(index -> written(List.of(index))))
        .or(() -> clock.map(this::run))
        .or(this::counted);
  }

  private Stream<Integer> columns() {
    return IntStream.range(0, table.width()).boxed();
  }

  private Stream<WrittenTime> times(List<Integer> columns) {
    return table.sample().stream()
        .flatMap(row -> WrittenTime.of(TimeColumn.text(row, columns)).stream());
  }

  private boolean isMostlyTime(List<Integer> columns) {
    long filled =
        table.sample().stream().filter(row -> !TimeColumn.text(row, columns).isEmpty()).count();
    return filled > 0 && times(columns).count() * 10L >= filled * 9;
  }

  private Optional<Integer> first(List<Integer> times, boolean dated, boolean timed) {
    return times.stream().filter(index -> isOf(List.of(index), dated, timed)).findFirst();
  }

  private boolean isOf(List<Integer> columns, boolean dated, boolean timed) {
    long all = times(columns).count();
    return times(columns).filter(time -> time.isOf(dated, timed)).count() * 2 > all;
  }

  /** A date with the time of day that stands in a column of its own, in digits alone too. */
  private Optional<List<Integer>> completed(int date, Optional<Integer> clock) {
    Stream<Integer> others =
        clock.map(Stream::of).orElseGet(() -> columns().filter(this::isOfBareDigits));
    return others
        .map(other -> List.of(date, other))
        .filter(both -> isMostlyTime(both) && isOf(both, true, true))
        .findFirst();
  }

  /** As times of day are that no sign parts; a number with a decimal mark is none. */
  private boolean isOfBareDigits(int index) {
    return table.sample().stream()
        .map(row -> row.cell(index))
        .allMatch(cell -> cell.matches("(\\d{4}|\\d{6})?"));
  }

  private Optional<List<Integer>> apart() {
    return APART.stream()
        .flatMap(
            many ->
                IntStream.rangeClosed(0, table.width() - many)
                    .mapToObj(from -> IntStream.range(from, from + many).boxed().toList()))
        .filter(parts -> isMostlyTime(parts) && isOf(parts, true, true))
        .findFirst();
  }

  private TimeColumn written(List<Integer> columns) {
    List<WrittenTime> sample = times(columns).filter(time -> time.isOf(true, true)).toList();
    return new TimeColumn(
        columns,
        WrittenTime.patterns(sample).stream()
            .map(choice -> new TimeReader(TimeReader.PATTERN, choice.exact(), choice.lenient()))
            .toList());
  }

  /** A column that looks like dates, though they can't be taken apart. */
  private Optional<Integer> unknown() {
    return columns()
        .filter(index -> !isMostlyTime(List.of(index)))
        .filter(
            index ->
                table.sample().stream().filter(row -> Cells.looksLikeTime(row.cell(index))).count()
                        * 2
                    > table.sample().size())
        .findFirst();
  }

  private TimeColumn run(int index) {
    boolean seconds = times(List.of(index)).anyMatch(time -> time.piece('s').isPresent());
    return TimeColumn.of(index, TimeReader.ELAPSED, seconds ? "h:mm:ss" : "h:mm");
  }

  private Optional<TimeColumn> counted() {
    return columns().filter(this::grows).min(Comparator.comparing(this::rank)).map(this::counter);
  }

  /** What is called a time first, a count of the rows last. */
  private int rank(int index) {
    boolean called =
        table
            .said(index)
            .anyMatch(
                word ->
                    word.matches(
                        "(?i).*(time|date|zeit|datum|elapsed|stamp|unix|epoch|sec|min).*"));
    return called ? 0 : isByOnes(index) ? 2 : 1;
  }

  private List<BigDecimal> numbers(int index) {
    return table.sample().stream().flatMap(row -> Cells.number(row.cell(index)).stream()).toList();
  }

  private boolean isByOnes(int index) {
    List<BigDecimal> numbers = numbers(index);
    return IntStream.range(1, numbers.size())
        .allMatch(i -> numbers.get(i).subtract(numbers.get(i - 1)).compareTo(BigDecimal.ONE) == 0);
  }

  /** Whether it never falls, or never rises, and changes at all. */
  private boolean grows(int index) {
    List<BigDecimal> numbers = numbers(index);
    List<Integer> steps =
        IntStream.range(1, numbers.size())
            .mapToObj(i -> numbers.get(i).compareTo(numbers.get(i - 1)))
            .filter(sign -> sign != 0)
            .toList();
    return steps.stream().distinct().count() == 1 && steps.size() > numbers.size() / 2;
  }

  /** By the digits of the first number: those of Unix time, the days of a spreadsheet, or any. */
  private TimeColumn counter(int index) {
    String whole =
        table.sample().stream()
            .map(row -> row.cell(index))
            .filter(Cells::isNumber)
            .findFirst()
            .orElse("")
            .replaceFirst("[.,].*", "");
    return switch (whole.length()) {
      case 10 -> TimeColumn.of(index, TimeReader.EPOCH, "seconds");
      case 13 -> TimeColumn.of(index, TimeReader.EPOCH, "milliseconds");
      default ->
          whole.matches("[34]\\d{4}")
              ? TimeColumn.of(index, TimeReader.SERIAL, "1899-12-30")
              : TimeColumn.of(index, TimeReader.ELAPSED, "seconds");
    };
  }
}
