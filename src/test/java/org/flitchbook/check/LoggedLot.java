package org.flitchbook.check;

import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;

/**
 * A {@link TrueLot} as its maker has it: a log with noise and rounding within the logger's accuracy
 * of 0.5 °F, and sheets. It can be damaged before it is judged.
 */
final class LoggedLot {

  static final ZoneId ZONE = Bench.ZONE;
  static final String LIMIT = "us.b99.cooling-1";

  private static final DateTimeFormatter CLOCK =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm:ss", Locale.ROOT);
  private static final double ACCURACY = 0.5;
  private static final List<Long> INTERVALS = List.of(30L, 60L, 60L, 120L, 120L, 120L, 180L, 300L);

  /**
   * One row.
   *
   * @param core as the logger had it, as is the air
   * @param text what it wrote in place of the core's number; empty where it wrote the number
   */
  record Row(long second, double core, double air, String text) {}

  private final TrueLot truth;
  private final SplittableRandom random;
  private final long interval;
  private List<Row> rows = new ArrayList<>();
  private double step;
  private boolean celsius;
  private String stated;
  private ZonedDateTime load = ZonedDateTime.of(LocalDateTime.parse("2026-02-24T08:00"), ZONE);
  private long late;
  private long secondExport = Long.MAX_VALUE;

  LoggedLot(TrueLot truth, SplittableRandom random) {
    this.truth = truth;
    this.random = random;
    this.interval = INTERVALS.get(random.nextInt(INTERVALS.size()));
    this.celsius = random.nextInt(4) == 0;
    this.step = random.nextInt(5) == 0 && !celsius ? 1 : 0.1;
    this.stated = celsius ? "°C" : "°F";
    for (long second = 0; second <= truth.end() * 60L; second += interval) {
      rows.add(read(second));
    }
  }

  private Row read(long second) {
    double minute = second / 60.0;
    double air = truth.air(minute) + noise(minute <= truth.out() ? 2.5 : 0.3);
    return new Row(second, truth.core(minute) + noise(0.15), air, "");
  }

  double noise(double sigma) {
    double sum = 0;
    for (int i = 0; i < 12; i++) {
      sum += random.nextDouble();
    }
    return sigma * (sum - 6);
  }

  TrueLot truth() {
    return truth;
  }

  SplittableRandom random() {
    return random;
  }

  List<Row> rows() {
    return rows;
  }

  void rows(List<Row> other) {
    rows = other;
  }

  long seconds() {
    return truth.end() * 60L;
  }

  void rounded() {
    step = 1;
  }

  void mistakenUnit() {
    stated = celsius ? "°F" : "°C";
  }

  void clockLate(long by) {
    late = by;
  }

  void exportedAgainFrom(long second) {
    secondExport = second;
  }

  /** So that the clock goes back after so many seconds. */
  void clockGoesBackAfter(long second) {
    load =
        ZonedDateTime.of(LocalDateTime.parse("2026-11-01T00:00"), ZONE)
            .plusHours(2)
            .minusSeconds(second);
  }

  /** As written: in the log's unit, rounded, and never further off than the logger may be. */
  private String written(double level, double true_) {
    double held =
        Math.max(true_ - ACCURACY + step / 2, Math.min(true_ + ACCURACY - step / 2, level));
    double shown = celsius ? (held - 32) / 1.8 : held;
    return step == 1
        ? String.valueOf(Math.round(shown))
        : String.valueOf(Math.round(shown * 10) / 10.0);
  }

  private String cell(Row row) {
    return row.text().isEmpty() ? written(row.core(), row.core()) : row.text();
  }

  Bench bench() {
    Bench bench =
        Bench.book()
            .doubting()
            .rule(LIMIT)
            .own(
                "finish",
                "smoke",
                "\"kind\": \"floor\", \"quantity\": \"peak internal temperature\", \"atLeast\": \"145 °F\"")
            .write(
                "smoke," + wall(0) + ",into smoke,SM",
                "smoke," + wall(truth.out() * 60L) + ",out of smoke",
                "chill," + wall(truth.into() * 60L) + ",into chill,F2",
                "chill," + wall(seconds()) + ",out of chill");
    hand(bench, "smoke", truth.out() - 1);
    hand(bench, "chill", truth.end() - 2);
    export(bench, "p1", 0, rows.isEmpty() ? 0 : rows.get(rows.size() - 1).second());
    return bench;
  }

  private void hand(Bench bench, String sheet, int minute) {
    if (random.nextInt(4) > 0) {
      bench.write(
          String.format(
              Locale.ROOT,
              "%s,%s,internal temperature,thickest,%.1f,°F,MA,HT-0",
              sheet,
              wall(minute * 60L),
              truth.core(minute)));
    }
  }

  private String wall(long second) {
    return load.plusSeconds(second).toOffsetDateTime().toString().replace('T', ' ');
  }

  private void export(Bench bench, String name, long from, long until) {
    if (secondExport < until) {
      write(bench, name + "-a", from, Math.min(until, secondExport + 5400));
      write(bench, name + "-b", secondExport, until);
    } else {
      write(bench, name, from, until);
    }
  }

  private void write(Bench bench, String name, long from, long until) {
    StringBuilder csv = new StringBuilder("Time,P1,Air\n");
    for (Row row : rows) {
      if (row.second() >= from && row.second() <= until) {
        csv.append(clock(row.second() + late))
            .append(',')
            .append(cell(row))
            .append(',')
            .append(written(row.air(), row.air()))
            .append('\n');
      }
    }
    bench.file(name + ".csv", csv.toString(), layout(name));
  }

  private String clock(long second) {
    LocalDateTime time = load.plusSeconds(second).toLocalDateTime();
    String text = time.toString().replace('T', ' ');
    return time.getSecond() == 0 ? text + ":00" : text;
  }

  private String layout(String name) {
    String air =
        "{\"column\": \"Air\", \"what\": \"%s\", \"unit\": \"%s\", \"place\": \"%s\", \"%s\": \"%s\"}";
    return """
        {"files": "%s.csv", "instrument": "LG-A",
         "time": {"column": "Time", "pattern": "yyyy-MM-dd HH:mm:ss", "zone": "America/New_York"},
         "columns": [{"column": "P1", "what": "internal temperature", "unit": "%s", "item": "P1", "lot": "A1"},
         %s, %s]}\
        """
        .formatted(
            name,
            stated,
            air.formatted(
                "chamber temperature",
                stated,
                "SM",
                "until",
                CLOCK.format(load.plusMinutes(truth.out()))),
            air.formatted(
                "cooler temperature",
                stated,
                "F2",
                "from",
                CLOCK.format(load.plusMinutes(truth.into()))));
  }
}
