package org.flitchbook.check;

import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.NavigableMap;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.flitchbook.check.HonestLog.Probe;
import org.flitchbook.check.HonestLot.Course;
import org.flitchbook.input.SourceFile;

/** Makes an {@link HonestBook}: its lots as they truly were, and what its maker wrote of them. */
final class HonestMaker {

  private static final LocalDate FIRST = LocalDate.parse("2026-02-02");
  private static final int LOAD_DAYS = 300;

  private final int number;
  private final SplittableRandom random;
  private final Set<Habit> habits;
  private final HonestSheets sheets;
  private final HonestTools tools;
  private final List<TrueRun> runs = new ArrayList<>();
  private final double fridge;

  HonestMaker(long seed, int number) {
    this.number = number;
    this.random = new SplittableRandom(seed + number);
    this.habits = Habit.some(number, random);
    this.sheets = new HonestSheets(random, habits);
    this.tools = new HonestTools(random, has(Habit.POUNDS));
    this.fridge = random.nextDouble(34, 36);
  }

  private boolean has(Habit habit) {
    return habits.contains(habit);
  }

  HonestBook book() {
    ZonedDateTime load = load();
    tools.check(sheets, load.minusDays(11).with(LocalTime.of(6, 10)));
    run("SM", "B", load);
    if (has(Habit.TWO_SMOKERS)) {
      run("SM2", "C", load.plusMinutes(20 + random.nextInt(40)));
    }
    if (has(Habit.SECOND_RUN)) {
      run("SM", "D", load.plusMinutes(runs.get(0).out() + 8 + random.nextInt(5)));
    }
    if (has(Habit.ROUNDS)) {
      rounds(load);
    }
    NavigableMap<LocalDate, List<SourceFile>> days = sheets.days();
    LocalDate day = List.copyOf(days.keySet()).get(random.nextInt(days.size()));
    return HonestBook.judged(number, habits, runs, days, day);
  }

  /** In the nights on which the clock is changed, so that the meat chills then. */
  private ZonedDateTime load() {
    LocalDate day =
        has(Habit.AUTUMN)
            ? LocalDate.parse("2026-10-31")
            : has(Habit.SPRING)
                ? LocalDate.parse("2026-03-07")
                : FIRST.plusDays(random.nextInt(LOAD_DAYS));
    boolean night = has(Habit.OVERNIGHT) || has(Habit.AUTUMN) || has(Habit.SPRING);
    return night
        ? day.atTime(17, 0).plusMinutes(random.nextInt(300)).atZone(Bench.ZONE)
        : day.atTime(7, 20).plusMinutes(random.nextInt(80)).atZone(Bench.ZONE);
  }

  /** From the week before the smoke to the day after it. */
  private void rounds(ZonedDateTime load) {
    for (int day = -9; day < 2; day++) {
      ZonedDateTime at =
          load.plusDays(day).with(LocalTime.of(13, 0)).plusMinutes(random.nextInt(40));
      for (String place : List.of("F1", "F2")) {
        String cells = "cooler temperature," + place + "," + tools.byHand(fridge + 2, "IQ");
        sheets.write(at.plusMinutes(place.equals("F1") ? 0 : 3), "dry", "", "", cells);
      }
    }
  }

  /** What hangs in one smoker: a lot or two, of one piece or more. */
  private void run(String smoker, String letter, ZonedDateTime load) {
    int lots = has(Habit.TWO_LOTS) || has(Habit.ONE_PROBE_FOR_TWO) ? 2 : 1;
    int pieces = has(Habit.PIECES) ? 2 + random.nextInt(2) : 1;
    TrueRun run = truth(lots * pieces, load);
    runs.add(run);
    String chilled = letter.equals("B") ? "F2" : "F3";
    List<Course> courses = new ArrayList<>();
    for (int i = 0; i < lots; i++) {
      ZonedDateTime cured = load.minusDays(8);
      String code = String.format(Locale.ROOT, "%ty%tj-%s%d", cured, cured, letter, i + 1);
      courses.add(new Course(code, run, smoker, chilled, i * pieces, pieces, load, 20 * i));
    }
    courses.forEach(course -> new HonestLot(course, sheets, tools, habits, random).write());
    if (!has(Habit.HAND_ONLY)) {
      String logger = letter.equals("B") ? "LG-A" : "LG-C";
      new HonestLog(courses.get(0), logger, probes(courses), tools, habits, random).write(sheets);
    }
    if (has(Habit.FRIDGE_LOG) && letter.equals("B")) {
      FridgeLog.write(load, sheets, tools, random);
    }
  }

  private TrueRun truth(int pieces, ZonedDateTime load) {
    List<Double> paces =
        IntStream.range(0, pieces).mapToObj(i -> random.nextDouble(0.9, 1.12)).toList();
    int cold = has(Habit.COLD_SMOKE) ? 120 + random.nextInt(50) : 0;
    int morning = load.getHour() < 12 ? 0 : (31 - load.getHour()) * 60;
    return new TrueRun(random, new TrueRun.Way(paces, cold, has(Habit.BASTED), fridge, morning));
  }

  private List<Probe> probes(List<Course> courses) {
    if (has(Habit.ONE_PROBE_FOR_TWO)) {
      return List.of(shared(courses));
    }
    List<Probe> probes = new ArrayList<>();
    for (Course course : courses) {
      for (int i = 0; i < course.pieces(); i++) {
        String piece = HonestLot.piece(i, course.pieces());
        String of = "\"lot\": \"" + course.code() + "\"";
        String more = piece.isEmpty() ? "" : ", \"piece\": \"" + piece + "\"";
        probes.add(new Probe(course.firstPiece() + i, of + more));
      }
    }
    return probes;
  }

  /** In the piece of the two lots that is heated and chilled last. */
  private static Probe shared(List<Course> courses) {
    int slowest = courses.get(0).run().slowest();
    String lots =
        courses.stream()
            .map(course -> "\"" + course.code() + "\"")
            .collect(Collectors.joining(", ", "\"lots\": [", "]"));
    return new Probe(slowest, lots + ", \"piece\": \"" + courses.get(slowest).code() + "\"");
  }
}
