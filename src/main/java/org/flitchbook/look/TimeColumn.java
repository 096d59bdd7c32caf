package org.flitchbook.look;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.flitchbook.table.Row;

/**
 * Where the time stands in the rows of a log, by which clocks it can be read, and how it goes on.
 */
final class TimeColumn {

  /** An offset from the world's time that a heading names; not the names of zones with its sign. */
  private static final Pattern ZONE =
      Pattern.compile(
          "(?<![/\\w])(?:(?:GMT|UTC)(?: ?([+-])(1[0-4]|0?\\d)(?::?([0-5]\\d))?(?!\\d))?(?![/\\w])"
              + "(?! ?[+-]\\d)|([+-])(?:1[0-4]|0\\d):[0-5]\\d(?!\\d))");

  private static final int SHOWN = 4;

  /** A clock that misses so many more times than another one is not that of the log. */
  private static final int BEHIND = 20;

  /** Of so many times the clock of a log may miss one. */
  private static final int OF = 10;

  String first = "";
  String last = "";

  /** What stands in the place of a time and is none, with how often; the first kinds of it. */
  final Map<String, Integer> strange = new LinkedHashMap<>();

  /** Its places under the first heading, and under that of the part that is being read. */
  private final List<Integer> home;

  private List<Integer> columns;
  private List<TimeReader> readers;
  private int times;

  /**
   * Times that have not been read yet.
   *
   * @param readers none where nothing is known of how they are written
   */
  TimeColumn(List<Integer> columns, List<TimeReader> readers) {
    this.home = columns;
    this.columns = columns;
    this.readers =
        readers.isEmpty() ? List.of(new TimeReader(TimeReader.PATTERN, "", "")) : readers;
  }

  static TimeColumn of(int index, String key, String value) {
    return new TimeColumn(List.of(index), List.of(new TimeReader(key, value, value)));
  }

  /** Takes the time of a row; false where it has none. */
  boolean take(Row row) {
    String text = text(row);
    if (text.isEmpty()) {
      return false;
    }
    boolean read = readers.stream().filter(each -> each.take(text, row.line())).count() > 0;
    if (!read && (strange.size() < SHOWN || strange.containsKey(text))) {
      strange.merge(text, 1, Integer::sum);
    }
    if (!read && (isCounted() || !Cells.isTime(text))) {
      readers.forEach(each -> each.missed--);
      return false;
    }
    if (readers.size() > 1) {
      int fewest = readers.stream().mapToInt(each -> each.missed).min().orElseThrow();
      readers = readers.stream().filter(each -> each.missed <= fewest + BEHIND).toList();
    }
    times++;
    first = first.isEmpty() ? text : first;
    last = text;
    return true;
  }

  /** Begins another part, under whose heading the same words may stand elsewhere. */
  void moveTo(List<Integer> places) {
    columns = places;
    readers.forEach(each -> each.steps.begin());
  }

  /** The first heading's words for its columns. */
  List<String> words(LogTable table) {
    return home.stream().map(table.heading()::cell).toList();
  }

  String text(Row row) {
    return text(row, columns);
  }

  static String text(Row row, List<Integer> columns) {
    return columns.stream().map(row::cell).collect(Collectors.joining(" ")).strip();
  }

  /** The readers that read the most times. */
  private List<TimeReader> best() {
    int fewest = readers.stream().mapToInt(each -> each.missed).min().orElseThrow();
    return readers.stream().filter(each -> each.missed == fewest).toList();
  }

  /** Of those that read the most the reader under which the log is the shortest. */
  TimeReader reader() {
    return best().stream().min(Comparator.comparing(each -> each.steps.span())).orElseThrow();
  }

  /** Whether dates and times of day are written out. */
  boolean isWritten() {
    return reader().key.equals(TimeReader.PATTERN);
  }

  /** Whether hours and minutes run are written. */
  boolean isRun() {
    return reader().value().contains(":mm") && !isWritten();
  }

  /** Whether it counts something of which only a person can say what it is. */
  boolean isCount() {
    return reader().key.equals(TimeReader.ELAPSED) && !isRun();
  }

  /** Whether it counts in parts of a unit, which no count of milliseconds does. */
  boolean hasFractions() {
    return Stream.of(first, last).anyMatch(text -> text.matches(".*\\d[.,]\\d.*"));
  }

  /** Whether it is a number. */
  boolean isCounted() {
    return !isWritten() && !isRun();
  }

  /**
   * The patterns that read its times, none where none reads nearly all; more than one where they
   * leave the order open, which the pace of the rows settles if they keep it under one alone.
   */
  List<String> patterns() {
    if (!isWritten() || reader().missed * OF > times) {
      return List.of();
    }
    List<TimeReader> steady = best().stream().filter(each -> each.steps.keepsPace()).toList();
    return (steady.size() == 1 ? steady : best()).stream().map(TimeReader::value).toList();
  }

  /** The zone that the times or the words above them name. */
  Optional<String> zone(LogTable table) {
    if (reader().key.equals(TimeReader.EPOCH)) {
      return Optional.of("UTC");
    }
    Optional<String> written =
        WrittenTime.of(first).flatMap(time -> time.piece('z')).map(WrittenTime.Piece::text);
    return written
        .map(text -> text.replaceFirst("^(?:UTC|GMT)(?=.)", ""))
        .map(text -> text.matches("[+-].*") ? "UTC" + text : text)
        .map(text -> text.equals("Z") ? "UTC" : text)
        .or(() -> home.stream().flatMap(table::said).filter(ZONE.asPredicate()).findFirst())
        .flatMap(TimeColumn::zone);
  }

  private static Optional<String> zone(String text) {
    return Stream.of(ZONE.matcher(text)).filter(Matcher::find).map(TimeColumn::zone).findFirst();
  }

  private static String zone(Matcher found) {
    if (found.group(4) != null) {
      return found.group();
    }
    if (found.group(1) == null) {
      return "UTC";
    }
    String minutes = found.group(3) == null ? "00" : found.group(3);
    String hours = (found.group(2).length() == 1 ? "0" : "") + found.group(2);
    return found.group(1) + hours + ":" + minutes;
  }

  /** Whether it has dates and no time of day. */
  boolean lacksClock() {
    return home.size() == 1
        && WrittenTime.of(first).filter(time -> time.isOf(true, false)).isPresent();
  }

  /** Whether it goes back by half a day and writes neither AM nor PM. */
  boolean lacksHalves() {
    long minutes = reader().steps.backBy / 60;
    return isWritten() && !reader().value().contains("a") && minutes >= 660 && minutes <= 780;
  }
}
