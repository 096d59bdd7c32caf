package org.flitchbook.check;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * How a book is read by whoever believes every row, takes one time on the wall from another, and
 * draws straight lines between readings: {@code met 71, 197}, in minutes, ppm, °F or hours.
 *
 * @param day the last folder that is read
 */
record NaiveReading(Path book, String day, String lot) {

  private static final int TIME = "2026-02-24 08:02:00".length();
  private static final LocalDateTime ZERO = LocalDateTime.parse("2026-01-01T00:00");
  private static final Map<String, Double> GRAMS =
      Map.of("g", 1.0, "oz", 28.349523125, "lb", 453.59237, "tsp", 5.0);

  /**
   * Reads what a limit is about.
   *
   * @param asked the limit in a word; for what a log shows also its file, its column and how it
   *     writes the time, such as {@code cooling stack*.csv P1 MM/dd/yyyy,HH:mm:ss}
   */
  String of(String asked) {
    String[] word = asked.split(" ", 4);
    return switch (word[0]) {
      case "cooling" -> cooling(log(word));
      case "finish" -> said(log(word).peak() >= 145, log(word).peak());
      case "nitrite" -> said(nitrite() <= 200, nitrite());
      case "turning" -> said(longest() <= 36, longest());
      case "cold" -> said(warmest() <= 41, warmest());
      default -> said(has("reviewed") && has("dispatched"));
    };
  }

  private static String cooling(Naive log) {
    return said(log.cools(), log.fall(130, 80), log.fall(80, 40));
  }

  private static String said(boolean met, double... values) {
    StringBuilder said = new StringBuilder(met ? "met" : "not met");
    for (double value : values) {
      said.append(said.indexOf("met ") < 0 ? " " : ", ");
      said.append(Double.isInfinite(value) ? "never" : "%.0f".formatted(value));
    }
    return said.toString();
  }

  // -------------------------------------------------------------------------------------- the log

  private Naive log(String[] asked) {
    String pattern = asked.length > 3 ? asked[3] : "yyyy-MM-dd HH:mm:ss";
    Naive naive = new Naive(new ArrayList<>(), new ArrayList<>());
    for (Path file : files(asked[1])) {
      List<String> rows = lines(file);
      int column = List.of(rows.get(0).split(",", -1)).indexOf(asked[2]);
      for (String row : rows.subList(1, rows.size())) {
        add(naive, row, column, DateTimeFormatter.ofPattern(pattern, Locale.ROOT));
      }
    }
    return naive;
  }

  private static void add(Naive naive, String row, int column, DateTimeFormatter format) {
    String level = row.split(",", -1)[column];
    if (!level.isEmpty()) {
      String time = row.substring(0, TIME);
      naive.add(minutes(LocalDateTime.parse(time, format)), Double.parseDouble(level));
    }
  }

  private static double minutes(LocalDateTime time) {
    return Duration.between(ZERO, time).toSeconds() / 60.0;
  }

  // ----------------------------------------------------------------------------------- the sheets

  private double nitrite() {
    return rows("curing salt").mapToDouble(NaiveReading::nitrite).sum()
        * 1e6
        / rows("green weight").mapToDouble(NaiveReading::grams).sum();
  }

  private static double nitrite(List<String> row) {
    return grams(row) * (row.get(3).equals("RC-118") ? 0.006 : 0.0625);
  }

  private static double grams(List<String> row) {
    return Double.parseDouble(row.get(4)) * GRAMS.get(row.get(5));
  }

  /** The longest time between two turns, in hours. */
  private double longest() {
    double[] times =
        Stream.of("into cure", "turned", "out of cure")
            .flatMap(this::rows)
            .mapToDouble(row -> minutes(LocalDateTime.parse(row.get(1).replace(' ', 'T'))) / 60)
            .sorted()
            .toArray();
    return IntStream.range(1, times.length)
        .mapToDouble(i -> times[i] - times[i - 1])
        .max()
        .orElse(0);
  }

  private double warmest() {
    return sheets()
        .filter(row -> row.get(2).equals("cooler temperature"))
        .mapToDouble(row -> Double.parseDouble(row.get(4)))
        .max()
        .orElse(0);
  }

  private boolean has(String what) {
    return rows(what).findFirst().isPresent();
  }

  private Stream<List<String>> rows(String what) {
    return sheets().filter(row -> row.get(0).equals(lot) && row.get(2).equals(what));
  }

  private Stream<List<String>> sheets() {
    return Stream.of("cure.csv", "dispatch.csv")
        .flatMap(name -> files(name).stream())
        .flatMap(file -> lines(file).stream().skip(1))
        .map(line -> List.of(line.split(",", -1)));
  }

  // ------------------------------------------------------------------------------------ the files

  /** A star stands for anything. */
  private List<Path> files(String name) {
    String like = name.replace(".", "\\.").replace("*", ".*");
    try (Stream<Path> all = Files.walk(book)) {
      return all.filter(file -> file.getFileName().toString().matches(like))
          .filter(file -> file.getParent().getFileName().toString().compareTo(day) <= 0)
          .sorted()
          .toList();
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }

  private static List<String> lines(Path file) {
    try {
      return Files.readAllLines(file, UTF_8);
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }
}
