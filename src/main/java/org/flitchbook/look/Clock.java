package org.flitchbook.look;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.flitchbook.table.Row;

/** Where the time stands in the rows of a log, in which form, and how it goes on. */
final class Clock {

  /** What the cells of the time hold. */
  enum Form {
    /** A date and a time of day. */
    WRITTEN,
    /** Hours, minutes and seconds without a date. */
    RUN,
    EPOCH_SECONDS,
    EPOCH_MILLISECONDS,
    /** The days of a spreadsheet. */
    SERIAL,
    /** Some number that grows. */
    COUNTED
  }

  private final List<Integer> columns;
  private final Form form;
  private final Stamps stamps = new Stamps();
  private final Map<String, Pace> paces = new TreeMap<>();
  private String first = "";
  private String last = "";
  private int strange;

  private Clock(List<Integer> columns, Form form) {
    this.columns = columns;
    this.form = form;
  }

  /** Finds the time's columns by the first rows; empty where no column grows like a time. */
  static Optional<Clock> of(Frame frame) {
    List<Row> rows = frame.sample();
    List<Integer> times =
        IntStream.range(0, frame.width()).filter(index -> mostly(rows, index)).boxed().toList();
    Optional<Integer> both =
        times.stream().filter(index -> has(rows, index, true, true)).findFirst();
    Optional<Integer> date =
        times.stream().filter(index -> has(rows, index, true, false)).findFirst();
    Optional<Integer> clock =
        times.stream().filter(index -> has(rows, index, false, true)).findFirst();
    if (both.isPresent()) {
      return Optional.of(new Clock(List.of(both.get()), Form.WRITTEN));
    }
    if (date.isPresent() && clock.isPresent()) {
      return Optional.of(new Clock(List.of(date.get(), clock.get()), Form.WRITTEN));
    }
    return clock.map(index -> new Clock(List.of(index), Form.RUN)).or(() -> counted(frame));
  }

  private static boolean mostly(List<Row> rows, int index) {
    long filled = rows.stream().filter(row -> !row.cell(index).isEmpty()).count();
    long times = rows.stream().filter(row -> Stamp.of(row.cell(index)).isPresent()).count();
    return filled > 0 && times * 10 >= filled * 9;
  }

  private static boolean has(List<Row> rows, int index, boolean date, boolean clock) {
    return rows.stream()
        .flatMap(row -> Stamp.of(row.cell(index)).stream())
        .findFirst()
        .filter(stamp -> stamp.isDated() == date && !stamp.clock().isEmpty() == clock)
        .isPresent();
  }

  private static Optional<Clock> counted(Frame frame) {
    return IntStream.range(0, frame.width())
        .boxed()
        .filter(index -> grows(frame.sample(), index))
        .min(Comparator.comparing(index -> isCalledSo(frame.heading().cell(index)) ? 0 : 1))
        .map(index -> new Clock(List.of(index), form(frame, index)));
  }

  private static boolean isCalledSo(String word) {
    return word.matches("(?i).*(time|date|zeit|datum|elapsed|stamp|unix|epoch|sec|min).*");
  }

  /** Whether it never falls, or never rises, and changes at all. */
  private static boolean grows(List<Row> rows, int index) {
    List<BigDecimal> numbers =
        rows.stream().flatMap(row -> Cells.number(row.cell(index)).stream()).toList();
    int up = 0;
    int down = 0;
    for (int i = 1; i < numbers.size(); i++) {
      int sign = numbers.get(i).compareTo(numbers.get(i - 1));
      up += sign > 0 ? 1 : 0;
      down += sign < 0 ? 1 : 0;
    }
    return numbers.size() > 1 && (up == 0) != (down == 0) && up + down > numbers.size() / 2;
  }

  private static Form form(Frame frame, int index) {
    String cell =
        frame.sample().stream()
            .map(row -> row.cell(index))
            .filter(c -> !c.isEmpty())
            .findFirst()
            .orElse("");
    String whole = cell.replaceFirst("[.,].*", "");
    return switch (whole.length()) {
      case 10 -> Form.EPOCH_SECONDS;
      case 13 -> Form.EPOCH_MILLISECONDS;
      case 5 -> whole.matches("[34]\\d{4}") ? Form.SERIAL : Form.COUNTED;
      default -> Form.COUNTED;
    };
  }

  void take(Row row) {
    String text = text(row);
    if (text.isEmpty()) {
      return;
    }
    Optional<Stamp> stamp = Stamp.of(text);
    Optional<BigDecimal> number = Cells.number(text);
    if (isWritten() ? stamp.isEmpty() : number.isEmpty()) {
      strange++;
      return;
    }
    first = first.isEmpty() ? text : first;
    last = text;
    if (isWritten()) {
      take(stamp.orElseThrow(), row.line());
    } else {
      pace("").take(seconds(number.orElseThrow()), row.line());
    }
  }

  private void take(Stamp stamp, int line) {
    stamps.take(stamp);
    if (stamp.isDated()) {
      for (String order : List.of("ymd", "dmy", "mdy")) {
        stamp.at(order).ifPresent(at -> pace(order).take(at, line));
      }
    } else {
      pace("").take(stamp.seconds(), line);
    }
  }

  private Pace pace(String order) {
    return paces.computeIfAbsent(order, each -> new Pace());
  }

  private long seconds(BigDecimal number) {
    BigDecimal seconds =
        switch (form) {
          case EPOCH_MILLISECONDS -> number.movePointLeft(3);
          case SERIAL -> number.multiply(BigDecimal.valueOf(86_400));
          default -> number;
        };
    return seconds.setScale(0, RoundingMode.HALF_UP).longValue();
  }

  boolean isWritten() {
    return form == Form.WRITTEN || form == Form.RUN;
  }

  String text(Row row) {
    return columns.stream().map(row::cell).collect(Collectors.joining(" ")).strip();
  }

  List<Integer> columns() {
    return columns;
  }

  Form form() {
    return form;
  }

  Stamps stamps() {
    return stamps;
  }

  String first() {
    return first;
  }

  String last() {
    return last;
  }

  /** Rows whose time is written in another way than most. */
  int strange() {
    return strange;
  }

  /** Whether it goes back by half a day and writes neither AM nor PM. */
  boolean lacksHalves() {
    long minutes = pace().backBy() / 60;
    return form == Form.WRITTEN && !stamps.haveHalves() && minutes >= 660 && minutes <= 780;
  }

  /** By the order of day and month under which the log is the shortest. */
  Pace pace() {
    List<String> orders = stamps.orders();
    return paces.entrySet().stream()
        .filter(each -> orders.isEmpty() || orders.contains(each.getKey()))
        .map(Map.Entry::getValue)
        .min(Comparator.comparing(Pace::span))
        .orElse(new Pace());
  }
}
