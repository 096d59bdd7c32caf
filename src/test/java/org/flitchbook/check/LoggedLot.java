package org.flitchbook.check;

import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;

/**
 * A {@link TrueLot} as its maker has it: a log of one or two probes with noise and rounding within
 * the logger's accuracy of 0.5 °F, and sheets. It can be damaged before it is judged.
 */
final class LoggedLot {

  private static final double ACCURACY = 0.5;
  private static final List<Long> INTERVALS = List.of(30L, 60L, 60L, 120L, 120L, 120L, 180L, 300L);

  /**
   * One row.
   *
   * @param core what lies around the first probe, as {@code thin} around the second and {@code air}
   *     around the one in the air
   * @param text what the logger wrote of the first; empty where it wrote what the probe read
   * @param time what it wrote of the time; empty where it wrote its clock
   */
  record Row(
      long second,
      double core,
      double thin,
      double air,
      Optional<String> text,
      Optional<String> time) {

    Row of(double otherCore) {
      return new Row(second, otherCore, thin, air, text, time);
    }

    Row swapped() {
      return new Row(second, /* core= */ air, thin, /* air= */ core, text, time);
    }

    Row otherProbes() {
      return new Row(second, /* core= */ thin, /* thin= */ core, air, text, time);
    }

    Row written(String cell) {
      return new Row(second, core, thin, air, Optional.of(cell), time);
    }

    Row at(String cell) {
      return new Row(second, core, thin, air, text, Optional.of(cell));
    }
  }

  /**
   * How the log is written.
   *
   * @param step to which levels are rounded
   * @param stated the unit that logs.json says
   * @param minutes whether times are written without seconds
   * @param secondExport from where on it was exported once more
   */
  record Form(
      boolean two,
      double step,
      boolean celsius,
      String stated,
      boolean minutes,
      long secondExport) {}

  private final TrueLot truth;
  private final SplittableRandom random;
  private final long noiseOf;
  private List<Row> rows = new ArrayList<>();
  private Form form;
  private ZonedDateTime load =
      ZonedDateTime.of(LocalDateTime.parse("2026-02-24T08:00"), Bench.ZONE);
  private long late;
  private long setAt = Long.MAX_VALUE;
  private long setBy;
  private long unitFrom = Long.MAX_VALUE;
  private double mistyped;
  private long skippedUntil;

  LoggedLot(TrueLot truth, SplittableRandom random) {
    this.truth = truth;
    this.random = random;
    this.noiseOf = random.nextLong();
    long interval = INTERVALS.get(random.nextInt(INTERVALS.size()));
    boolean celsius = random.nextInt(4) == 0;
    double step = random.nextInt(5) == 0 && !celsius ? 1 : 0.1;
    boolean two = random.nextInt(3) == 0;
    this.form = new Form(two, step, celsius, celsius ? "°C" : "°F", false, Long.MAX_VALUE);
    for (long second = 0; second <= truth.end() * 60L; second += interval) {
      rows.add(read(second));
    }
  }

  private Row read(long second) {
    double minute = second / 60.0;
    double air = truth.air(minute) + noise(minute <= truth.out() ? 2.5 : 0.3);
    return new Row(
        second, truth.core(minute), truth.thin(minute), air, Optional.empty(), Optional.empty());
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

  Form form() {
    return form;
  }

  void form(Form other) {
    form = other;
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

  double mistyped() {
    return mistyped;
  }

  /** By how much the reading by hand at the finish is written too high. */
  void mistyped(double by) {
    mistyped = by;
  }

  /** Up to which second the rows are passed over; 0 where none are. */
  long skippedUntil() {
    return skippedUntil;
  }

  void skippedUntil(long second) {
    skippedUntil = second;
  }

  void clockLate(long by) {
    late = by;
  }

  /** Somebody sets the logger's clock while it runs. */
  void clockSet(long second, long by) {
    setAt = second;
    setBy = by;
  }

  /** The logger is switched to the other unit while it runs. */
  void otherUnitFrom(long second) {
    unitFrom = second;
  }

  /** So that the clock is changed after so many seconds. */
  void clockChangesAfter(long second, String day) {
    load =
        ZonedDateTime.of(LocalDateTime.parse(day + "T00:00"), Bench.ZONE)
            .plusHours(2)
            .minusSeconds(second);
  }

  /** The time on the wall so many seconds after the load. */
  ZonedDateTime wall(long second) {
    return load.plusSeconds(second);
  }

  /** What the logger's clock says. */
  LocalDateTime clock(long second) {
    return load.plusSeconds(second + late + (second >= setAt ? setBy : 0)).toLocalDateTime();
  }

  /** In the log's unit, rounded as the log is. */
  String written(double level, long second) {
    boolean celsius = form.celsius() != (second >= unitFrom);
    double shown = celsius ? (level - 32) / 1.8 : level;
    return form.step() == 1
        ? String.valueOf(Math.round(shown))
        : String.valueOf(Math.round(shown * 10) / 10.0);
  }

  String core(Row row) {
    return row.text().orElseGet(() -> probe(row.core(), row.second(), noiseOf));
  }

  String thin(Row row) {
    return probe(row.thin(), row.second(), noiseOf + 1);
  }

  /** With noise and rounding never further off than the logger may be. */
  private String probe(double level, long second, long noise) {
    double room = ACCURACY - form.step() * (form.celsius() ? 0.9 : 0.5);
    double off = 0.4 * new SplittableRandom(noise ^ second).nextDouble(-1, 1);
    return written(level + Math.max(-room, Math.min(room, off)), second);
  }

  /** As whoever believes every row reads it, by the clock on the wall. */
  Naive naive() {
    Naive naive = new Naive(new ArrayList<>(), new ArrayList<>());
    for (Row row : rows) {
      String cell = core(row);
      if (cell.matches("-?[0-9.]+") && row.time().isEmpty() && row.second() >= skippedUntil) {
        double number = Double.parseDouble(cell);
        double level = form.stated().equals("°C") ? 32 + 1.8 * number : number;
        naive.add(clock(row.second()).toEpochSecond(ZoneOffset.UTC) / 60.0, level);
      }
    }
    return naive;
  }
}
