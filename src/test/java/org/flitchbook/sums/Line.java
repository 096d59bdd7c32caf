package org.flitchbook.sums;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import org.flitchbook.measure.Level;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Unit;
import org.flitchbook.practice.ToolPractice;

/**
 * A curve written as a row of text, {@code "0:150 10:131 20:129 h30:125"}: minutes and °F, with an
 * {@code h} before the minute of a reading taken by hand and written to the minute.
 */
record Line(List<Point> points, long interval, long doubt) implements Curve {

  static final long MINUTE = 60_000;

  record Point(long at, long level, boolean byHand) {}

  /** Of a log with a reading a minute. */
  static Line of(String text) {
    return every(1, text);
  }

  /** Of a log with a reading every so many minutes. */
  static Line every(int minutes, String text) {
    return in(Unit.FAHRENHEIT, minutes, text);
  }

  /** The same in °C. */
  static Line celsius(int minutes, String text) {
    return in(Unit.CELSIUS, minutes, text);
  }

  /** Two readings alike, so many minutes apart, without a gap. */
  static Line hold(String at, BigDecimal minutes) {
    long millis = minutes.multiply(BigDecimal.valueOf(MINUTE)).longValueExact();
    long level = Level.of(Quantity.required(at));
    return new Line(
        List.of(new Point(0, level, false), new Point(millis, level, false)), millis + 1, 0);
  }

  private static Line in(Unit unit, int minutes, String text) {
    List<Point> points = new ArrayList<>();
    for (String part : text.trim().split("\\s+", -1)) {
      boolean byHand = part.startsWith("h");
      String[] pair = part.substring(byHand ? 1 : 0).split(":", 2);
      long at = new BigDecimal(pair[0]).multiply(BigDecimal.valueOf(MINUTE)).longValueExact();
      long level = Level.of(new BigDecimal(pair[1]), unit).orElseThrow();
      points.add(new Point(at, level, byHand));
    }
    return new Line(points, minutes * MINUTE, 0);
  }

  Line within(String uncertainty) {
    return new Line(points, interval, Level.ofDifference(Quantity.required(uncertainty)));
  }

  /** The same, so much later. */
  Line later(long millis) {
    return new Line(
        points.stream()
            .map(point -> new Point(point.at() + millis, point.level(), point.byHand()))
            .toList(),
        interval,
        doubt);
  }

  static long fahrenheit(String degrees) {
    return Level.of(new BigDecimal(degrees), Unit.FAHRENHEIT).orElseThrow();
  }

  @Override
  public int size() {
    return points.size();
  }

  @Override
  public long earliest(int index) {
    return points.get(index).at();
  }

  @Override
  public long latest(int index) {
    return points.get(index).at() + (byHand(index) ? MINUTE - 1 : 0);
  }

  @Override
  public long level(int index, Shift shift) {
    long level = points.get(index).level();
    return switch (shift) {
      case AS_WRITTEN -> level;
      case UP -> level + doubt;
      case DOWN -> level - doubt;
    };
  }

  @Override
  public boolean byHand(int index) {
    return points.get(index).byHand();
  }

  @Override
  public long longestStep() {
    return ToolPractice.get().gap().longestStep(interval);
  }
}
