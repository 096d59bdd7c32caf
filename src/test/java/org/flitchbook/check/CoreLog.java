package org.flitchbook.check;

import java.time.LocalTime;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Random;
import java.util.TreeMap;
import java.util.function.DoubleUnaryOperator;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;

/**
 * A day's log of one core, as meat would have it, to be damaged. It goes in at 08:00 with 45 °F,
 * has 150 when it comes out at 11:00, lies in the fridge from 11:30 on, and comes out of it at
 * 18:00.
 */
public final class CoreLog {

  private static final DateTimeFormatter SECONDS =
      DateTimeFormatter.ofPattern("HH:mm:ss", Locale.ROOT);

  private final NavigableMap<LocalTime, Double> levels = new TreeMap<>();

  private CoreLog(int seconds, NavigableMap<LocalTime, Double> corners) {
    for (LocalTime at = at("08:00"); !at.isAfter(at("18:00")); at = at.plusSeconds(seconds)) {
      levels.put(at, level(corners, at));
    }
  }

  /** From 130 to 80 °F in 57 minutes, on to 40 in 229. */
  public static CoreLog every(int seconds) {
    return new CoreLog(
        seconds,
        new TreeMap<>(
            Map.of(
                at("08:00"), 45.0,
                at("11:00"), 150.0,
                at("11:30"), 141.0,
                at("12:40"), 80.0,
                at("16:40"), 38.0,
                at("18:00"), 37.0)));
  }

  public static CoreLog everyMinute() {
    return every(60);
  }

  /** From 130 to 80 °F in 115 minutes. */
  static CoreLog slow() {
    return new CoreLog(
        60,
        new TreeMap<>(
            Map.of(
                at("08:00"), 45.0,
                at("11:00"), 150.0,
                at("11:30"), 141.0,
                at("13:50"), 80.0,
                at("17:50"), 39.0,
                at("18:00"), 38.5)));
  }

  private static LocalTime at(String text) {
    return LocalTime.parse(text);
  }

  private static double level(NavigableMap<LocalTime, Double> corners, LocalTime at) {
    Map.Entry<LocalTime, Double> from = corners.floorEntry(at);
    Map.Entry<LocalTime, Double> to = corners.ceilingEntry(at);
    double span = to.getKey().toSecondOfDay() - from.getKey().toSecondOfDay();
    double part = span == 0 ? 0 : (at.toSecondOfDay() - from.getKey().toSecondOfDay()) / span;
    return from.getValue() + part * (to.getValue() - from.getValue());
  }

  public double level(String time) {
    return levels.get(at(time));
  }

  NavigableMap<LocalTime, Double> levels() {
    return levels;
  }

  /** Other levels from a time up to another one, which is not counted in. */
  public CoreLog change(String from, String until, DoubleUnaryOperator change) {
    levels
        .subMap(at(from), true, at(until), false)
        .replaceAll((at, level) -> change.applyAsDouble(level));
    return this;
  }

  public CoreLog hold(String from, String until, double level) {
    return change(from, until, old -> level);
  }

  /** On a straight line from where it is to a level, which is kept until another time. */
  public CoreLog ramp(String from, double minutes, double to, String until) {
    LocalTime begin = at(from);
    double start = levels.get(begin);
    levels
        .subMap(begin, true, at(until), false)
        .replaceAll(
            (at, level) -> {
              double part = (at.toSecondOfDay() - begin.toSecondOfDay()) / (60 * minutes);
              return start + Math.min(1, part) * (to - start);
            });
    return this;
  }

  public CoreLog silent(String from, String until) {
    levels.subMap(at(from), true, at(until), false).clear();
    return this;
  }

  public CoreLog noisy(double half) {
    return noisy(half, 7);
  }

  CoreLog noisy(double half, long seed) {
    Random random = new Random(seed);
    levels.replaceAll((at, level) -> level + half * (2 * random.nextDouble() - 1));
    return this;
  }

  public CoreLog whole() {
    levels.replaceAll((at, level) -> (double) Math.round(level));
    return this;
  }

  /** As a clock writes it that is so many minutes ahead, by one line between two times. */
  public CoreLog clock(int atLoad, int atEnd) {
    return written(
        at -> {
          double part = (at.toSecondOfDay() - at("08:00").toSecondOfDay()) / 36_000.0;
          return at.plusSeconds(Math.round(60 * (atLoad + part * (atEnd - atLoad))));
        });
  }

  /** As a clock writes it that is set forward at a time. */
  public CoreLog clockSet(String from, int minutes) {
    return written(at -> at.isBefore(at(from)) ? at : at.plusMinutes(minutes));
  }

  private CoreLog written(UnaryOperator<LocalTime> clock) {
    NavigableMap<LocalTime, Double> moved = new TreeMap<>();
    levels.forEach((at, level) -> moved.put(clock.apply(at), level));
    levels.clear();
    levels.putAll(moved);
    return this;
  }

  public String text() {
    return levels.entrySet().stream()
        .map(
            each ->
                String.format(
                    Locale.ROOT, "%s %.1f", SECONDS.format(each.getKey()), each.getValue()))
        .collect(Collectors.joining("; "));
  }

  /** A lot with the cooling of option 1, its core so logged with LG-A. */
  public Bench bench() {
    return lot().core("P1", "LG-A", text());
  }

  /** With logs of the air: 199 °F in the smoker, 36 °F in the fridge. */
  public Bench inAir() {
    return bench()
        .log("Chamber", "chamber temperature", "°F", "LG-A", SMOKER, "08:00:00..11:00:00/60 199")
        .log("Cooler", "cooler temperature", "°F", "LG-A", FRIDGE, "11:30:00..18:00:00/60 36");
  }

  private static final String SMOKER = "\"place\": \"SM\"";
  private static final String FRIDGE = "\"place\": \"F2\"";

  public static Bench lot() {
    return Bench.book()
        .doubting()
        .rule("us.b99.cooling-1")
        .write(
            "smoke,08:00:00,into smoke,SM",
            "smoke,11:00:00,out of smoke",
            "chill,11:30:00,into chill,F2",
            "chill,18:00:00,out of chill");
  }
}
