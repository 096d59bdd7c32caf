package org.flitchbook.check;

import java.time.LocalDate;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.function.DoubleFunction;

/** The log or the two logs of a run, with noise and rounding within their accuracy. */
final class HonestLog {

  private static final List<Integer> INTERVALS = List.of(30, 60, 60, 120, 180);

  /**
   * A probe.
   *
   * @param of the lots that it is of and its piece, as logs.json says them
   */
  record Probe(int piece, String of) {}

  /** A logger, and from which second to which it runs. */
  private record Stretch(String tool, String prefix, boolean celsius, long from, long until) {}

  private final TrueRun run;
  private final ZonedDateTime load;
  private final String smoker;
  private final String fridge;
  private final String logger;
  private final List<Probe> probes;
  private final HonestTools tools;
  private final Set<Habit> habits;
  private final SplittableRandom random;
  private final long interval;
  private final long clock;
  private final String pattern;

  HonestLog(
      HonestLot.Course course,
      String logger,
      List<Probe> probes,
      HonestTools tools,
      Set<Habit> habits,
      SplittableRandom random) {
    this.run = course.run();
    this.load = course.load();
    this.smoker = course.smoker();
    this.fridge = course.fridge();
    this.logger = logger;
    this.probes = probes;
    this.tools = tools;
    this.habits = habits;
    this.random = random;
    int usual = INTERVALS.get(random.nextInt(INTERVALS.size()));
    this.interval = has(Habit.TEN_SECONDS) ? 10 : has(Habit.FIVE_MINUTES) ? 300 : usual;
    this.clock = random.nextLong(-60, 60);
    boolean minutes = has(Habit.TO_THE_MINUTE) && interval >= 60;
    this.pattern = minutes ? "yyyy-MM-dd HH:mm" : "yyyy-MM-dd HH:mm:ss";
  }

  private boolean has(Habit habit) {
    return habits.contains(habit);
  }

  /** Adds what was logged to the folder of the day on which it was pulled. */
  void write(HonestSheets sheets) {
    LocalDate pulled = load.plusMinutes(run.end()).toLocalDate();
    for (Stretch each : stretches()) {
      String name = (each.prefix() + "-" + logger).toLowerCase(Locale.ROOT) + ".csv";
      sheets.log(pulled, name, csv(each), layout(name, each));
    }
  }

  private List<Stretch> stretches() {
    String tool = has(Habit.WHOLE_DEGREES) ? "LG-W" : logger;
    boolean celsius = has(Habit.CELSIUS);
    long from = 60L * (has(Habit.LATE_START) ? 15 + random.nextInt(10) : random.nextInt(6) - 5);
    long end = 60L * (run.end() - 1);
    if (!has(Habit.TWO_LOGGERS)) {
      return List.of(new Stretch(tool, "P", celsius, from, end));
    }
    long put = 60L * (run.out() + 3 + random.nextInt(10));
    return List.of(
        new Stretch(tool, "P", celsius, from, 60L * run.out()),
        new Stretch("LG-B", "Q", random.nextBoolean(), put, end));
  }

  private String csv(Stretch log) {
    StringBuilder csv = new StringBuilder("Time");
    for (int i = 1; i <= probes.size(); i++) {
      csv.append(',').append(log.prefix()).append(i);
    }
    csv.append(",Air\n");
    long silent = 60L * (60 + random.nextInt(40));
    long again = silent + (has(Habit.BATTERY) ? 60L * (6 + random.nextInt(8)) : 0);
    long drawn = has(Habit.PROBE_DRAWN) ? log.until() + 60 : Long.MAX_VALUE;
    long last = log.until() + (has(Habit.PROBE_DRAWN) ? 240 : 0);
    for (long second = log.from(); second <= last; second += interval) {
      if (second < silent || second >= again) {
        csv.append(row(log, second, drawn));
      }
    }
    return csv.toString();
  }

  private String row(Stretch log, long second, long drawn) {
    StringBuilder row = new StringBuilder(wall(second, false));
    for (Probe probe : probes) {
      double meat = run.core(probe.piece(), second / 60.0);
      double level =
          second < drawn ? meat : 64 + (meat - 64) * StrictMath.exp(-(second - drawn) / 40.0);
      row.append(',').append(written(log, level));
    }
    double level = run.air(second / 60.0) + random.nextDouble(-1, 1);
    return row.append(',').append(written(log, level)).append('\n').toString();
  }

  private String written(Stretch log, double level) {
    double shown = tools.read(log.tool(), level);
    double unit = log.celsius() ? (shown - 32) / 1.8 : shown;
    return String.format(Locale.ROOT, log.tool().equals("LG-W") ? "%.0f" : "%.1f", unit);
  }

  /** As the logger's clock has it; in the doubled hour with its offset, where that is asked for. */
  private String wall(long second, boolean offset) {
    ZonedDateTime time = load.plusSeconds(second + clock);
    boolean twice = Bench.ZONE.getRules().getValidOffsets(time.toLocalDateTime()).size() > 1;
    String form = offset && twice ? pattern + "XXX" : pattern;
    return DateTimeFormatter.ofPattern(form, Locale.ROOT).format(time);
  }

  private String layout(String name, Stretch log) {
    String unit = log.celsius() ? "°C" : "°F";
    List<String> columns = new ArrayList<>();
    for (int i = 1; i <= probes.size(); i++) {
      String probe = log.prefix() + i;
      columns.add(
          "{\"column\": \"%s\", \"what\": \"internal temperature\", \"unit\": \"%s\", \"item\": \"%s\", %s}"
              .formatted(probe, unit, probe, probes.get(i - 1).of()));
    }
    DoubleFunction<String> at = minute -> wall((long) (60 * minute), true);
    String air =
        "{\"column\": \"Air\", \"what\": \"%s\", \"unit\": \""
            + unit
            + "\", \"place\": \"%s\", \"%s\": \"%s\"}";
    if (log.from() < 60L * run.out()) {
      columns.add(air.formatted("chamber temperature", smoker, "until", at.apply(run.out())));
    }
    if (log.prefix().equals("Q") || (has(Habit.AIR_MOVES_ALONG) && !has(Habit.TWO_LOGGERS))) {
      columns.add(air.formatted("cooler temperature", fridge, "from", at.apply(run.into() + 5)));
    }
    return """
    {"files": "%s", "instrument": "%s",
     "time": {"column": "Time", "pattern": "%s", "zone": "America/New_York"},
     "columns": [%s]}\
    """
        .formatted(name, log.tool(), pattern, String.join(",\n", columns));
  }
}
