package org.flitchbook.check;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;

/**
 * A core in tenths of a °C, second by second after 08:00, and its exact copy in °F: a tenth of a °C
 * is 0.18 °F, so both have finitely many decimals.
 */
record Celsius(List<long[]> points) {

  private static final long[] EDGES = {50, 100, 600, 700};
  private static final long STEP = 5;

  static Celsius empty() {
    return new Celsius(new ArrayList<>());
  }

  Celsius at(long second, long tenths) {
    points.add(new long[] {second, tenths});
    return this;
  }

  /** One reading a minute on a straight line, both ends included, rounded to the tenth. */
  Celsius line(long from, long until, long first, long last) {
    for (long second = from; second <= until; second += 60) {
      at(second, first + (last - first) * (second - from) / Math.max(1, until - from));
    }
    return this;
  }

  /** A core that is heated and cooled, and that often lies on 5, 10, 60 or 70 °C to the tenth. */
  static Celsius random(SplittableRandom random) {
    long peak = new long[] {590, 600, 650, 695, 700, 705, 720}[random.nextInt(7)];
    long end = new long[] {40, 45, 50, 55, 95, 100, 105}[random.nextInt(7)];
    long reached = 60L * (15 + random.nextInt(40));
    long left = reached + 60L * random.nextInt(12);
    long cold = left + 60L * (30 + random.nextInt(60));
    Celsius smooth = empty().line(0, reached, 40, peak).line(reached + 60, left, peak, peak);
    smooth.line(left + 60, cold, peak, end).line(cold + 60, 10_800, end, end);
    Celsius core = empty();
    smooth.points.forEach(point -> core.at(point[0], near(point[1], random)));
    return core;
  }

  private static long near(long tenths, SplittableRandom random) {
    for (long edge : EDGES) {
      if (Math.abs(tenths - edge) <= STEP && random.nextBoolean()) {
        return edge;
      }
    }
    return random.nextInt(8) == 0 ? tenths + STEP * (random.nextInt(3) - 1) : tenths;
  }

  /** As {@link Log} reads it. */
  String log(String unit) {
    List<String> readings = new ArrayList<>();
    points.forEach(point -> readings.add(clock(point[0]) + " " + degrees(point[1], unit)));
    return String.join("; ", readings);
  }

  static String clock(long second) {
    return String.format(
        Locale.ROOT, "%02d:%02d:%02d", 8 + second / 3600, second / 60 % 60, second % 60);
  }

  static String degrees(long tenths, String unit) {
    BigDecimal celsius = BigDecimal.valueOf(tenths, 1);
    return unit.equals("°C")
        ? celsius.toPlainString()
        : celsius.multiply(new BigDecimal("1.8")).add(new BigDecimal(32)).toPlainString();
  }

  /** The temperatures in braces, in °C, as the unit has them: {@code {5}} is 41 °F. */
  static String limit(String numbers, String unit) {
    String text = numbers;
    for (long edge : EDGES) {
      String degrees = degrees(edge, unit) + " " + unit;
      text = text.replace("{" + edge / 10 + "}", "\"" + degrees + "\"");
    }
    return text;
  }
}
