package org.flitchbook.check;

import java.time.ZonedDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.stream.Stream;

/** The rows of a lot, from its weighing to its dispatch, as an honest maker writes them. */
final class HonestLot {

  /**
   * Where and when it is made.
   *
   * @param smoker where it is smoked
   * @param fridge where it is chilled
   * @param firstPiece its number among the pieces of its run
   * @param pieces how many are its own
   * @param load into the smoker
   * @param delay minutes after the first lot of the day, for what one person does lot by lot
   */
  record Course(
      String code,
      TrueRun run,
      String smoker,
      String fridge,
      int firstPiece,
      int pieces,
      ZonedDateTime load,
      int delay) {}

  private final Course course;
  private final TrueRun run;
  private final HonestSheets sheets;
  private final HonestTools tools;
  private final Set<Habit> habits;
  private final SplittableRandom random;
  private final List<Double> greens = new ArrayList<>();
  private final boolean pieceByPiece;
  private double left = 1;

  HonestLot(
      Course course,
      HonestSheets sheets,
      HonestTools tools,
      Set<Habit> habits,
      SplittableRandom random) {
    this.course = course;
    this.run = course.run();
    this.sheets = sheets;
    this.tools = tools;
    this.habits = habits;
    this.random = random;
    this.pieceByPiece = course.pieces() > 1 && random.nextBoolean();
    for (int i = 0; i < course.pieces(); i++) {
      greens.add(random.nextDouble(3200, 5400));
    }
  }

  /** What a piece is called; empty where it is the only one. */
  static String piece(int number, int of) {
    return of == 1 ? "" : String.valueOf((char) ('a' + number));
  }

  private String piece(int number) {
    return piece(number, course.pieces());
  }

  private void write(ZonedDateTime at, String sheet, String cells) {
    sheets.write(at, sheet, course.code(), "", cells);
  }

  private void write(ZonedDateTime at, String sheet, int piece, String cells) {
    sheets.write(at, sheet, course.code(), piece(piece), cells);
  }

  private double fridge() {
    return random.nextDouble(35.5, 38.5);
  }

  void write() {
    ZonedDateTime dried = course.load().minusMinutes(8 + random.nextInt(8));
    ZonedDateTime cured =
        course.load().minusHours(18).toLocalDate().atTime(14, 30).atZone(course.load().getZone());
    cured = cured.plusMinutes(random.nextInt(40) + course.delay());
    ZonedDateTime weighed =
        cured.minusDays(7 + random.nextInt(3)).withHour(9).plusMinutes(random.nextInt(20));
    cure(weighed, cured);
    ZonedDateTime soaked = soak(cured.plusMinutes(8));
    dry(soaked.plusMinutes(10), dried);
    smoke();
    chill();
    leave();
  }

  private void cure(ZonedDateTime weighed, ZonedDateTime until) {
    ZonedDateTime at = weighed;
    write(at, "cure", "product,JTB,,,MA");
    write(at, "cure", "supplier lot,DE-0212,,,MA,,Drovers End Abattoir");
    write(at.plusMinutes(1), "cure", "received temperature,," + tools.byHand(37.5, "MA"));
    boolean rind = habits.contains(Habit.RIND_ON);
    write(at.plusMinutes(2), "cure", "rind,," + (rind ? "on" : "off") + ",,MA");
    at = at.plusMinutes(3);
    for (int i = 0; i < course.pieces(); i++) {
      weigh(at, i, rind);
      at = at.plusMinutes(9);
    }
    at = at.plusMinutes(5);
    write(at, "cure", "surfaces covered,,all,,MA");
    write(at.plusMinutes(4), "cure", "into cure,F1,,,MA");
    if (habits.contains(Habit.MOVED)) {
      ZonedDateTime moved = at.plusDays(3).withHour(13).plusMinutes(course.delay());
      hold(at.plusMinutes(30), moved, "cure", "F1", true);
      write(moved, "cure", "out of cure,,,,MA,,moved to the fan fridge");
      write(moved.plusMinutes(4), "cure", "into cure,F2,,,MA");
      hold(moved.plusMinutes(10), until, "cure", "F2", true);
    } else {
      hold(at.plusMinutes(30), until, "cure", "F1", true);
    }
    write(until, "cure", "out of cure,,,,MA");
    weight(until.plusMinutes(2), "cure", random.nextDouble(0.945, 0.972));
  }

  private void weigh(ZonedDateTime at, int piece, boolean rind) {
    double green = greens.get(piece);
    write(at, "cure", piece, "green weight,," + tools.piece(green));
    double skin = rind ? green * random.nextDouble(0.08, 0.12) : 0;
    if (rind) {
      write(at.plusMinutes(1), "cure", piece, "rind weight,," + tools.piece(skin));
      greens.set(piece, green - skin);
    }
    double thick = 38 * StrictMath.sqrt(run.pace(course.firstPiece() + piece));
    write(at.plusMinutes(2), "cure", piece, "thickness,," + tools.thickness(thick) + ",MA");
    double cure = (green - skin) * random.nextDouble(145e-6, 165e-6) / 0.0625;
    write(at.plusMinutes(5), "cure", piece, "curing salt,C1-7741," + tools.ingredient(cure));
    write(at.plusMinutes(6), "cure", piece, "salt,," + tools.ingredient(green * 0.02));
    write(at.plusMinutes(7), "cure", piece, "sugar,," + tools.ingredient(green * 0.01));
    write(at.plusMinutes(8), "cure", piece, "other,juniper," + tools.ingredient(green * 0.002));
  }

  /** Morning and evening, as long as it lasts; the morning before it is over too. */
  private void hold(
      ZonedDateTime from, ZonedDateTime until, String sheet, String place, boolean turning) {
    for (int day = 0; !from.plusDays(day).toLocalDate().isAfter(until.toLocalDate()); day++) {
      ZonedDateTime midnight = from.plusDays(day).truncatedTo(ChronoUnit.DAYS);
      String by = midnight.getDayOfWeek().getValue() < 3 ? "MA" : "IQ";
      ZonedDateTime morning = midnight.plusHours(6).plusMinutes(30 + random.nextInt(50));
      if (turning && isWithin(morning, from, until)) {
        write(morning, sheet, "turned,,,," + by);
      }
      ZonedDateTime evening = midnight.plusHours(17).plusMinutes(50 + random.nextInt(40));
      Stream.of(morning.plusMinutes(1), evening)
          .filter(time -> isWithin(time, from, until))
          .forEach(time -> cooler(time, sheet, place, by));
    }
    cooler(until.minusMinutes(5), sheet, place, "MA");
  }

  private static boolean isWithin(ZonedDateTime time, ZonedDateTime from, ZonedDateTime until) {
    return time.isAfter(from) && time.isBefore(until.minusMinutes(20));
  }

  /** Of the place, and so for every lot in it; by some written without a lot. */
  private void cooler(ZonedDateTime at, String sheet, String place, String by) {
    String lot = random.nextInt(4) == 0 ? "" : course.code();
    String cells = "cooler temperature," + place + "," + tools.byHand(fridge(), by);
    sheets.write(at, sheet, lot, "", cells);
  }

  private double whole() {
    return greens.stream().mapToDouble(Double::doubleValue).sum() * left;
  }

  private void weight(ZonedDateTime at, String sheet, double share) {
    left *= share;
    if (pieceByPiece) {
      for (int i = 0; i < course.pieces(); i++) {
        write(at.plusMinutes(i), sheet, i, "weight,," + tools.piece(greens.get(i) * left));
      }
      return;
    }
    double whole = whole();
    boolean corrected = habits.contains(Habit.CORRECTED) && sheet.equals("soak");
    String right = "weight,," + tools.piece(whole);
    if (corrected) {
      String wrong = "weight,," + tools.piece(whole + 90);
      sheets.correct(at, sheet, course.code(), "", wrong, right + ",digits swapped; card on file");
    } else {
      write(at, sheet, right);
    }
  }

  private ZonedDateTime soak(ZonedDateTime at) {
    int minutes = 45 + random.nextInt(25);
    write(at, "soak", "into soak,SK,,,MA");
    write(at.plusMinutes(1), "soak", "water temperature,," + tools.byHand(39, "MA"));
    write(at.plusMinutes(minutes - 2), "soak", "water temperature,," + tools.byHand(39.7, "MA"));
    write(at.plusMinutes(minutes), "soak", "out of soak,,,,MA");
    weight(at.plusMinutes(minutes + 4), "soak", random.nextDouble(1.003, 1.015));
    return at.plusMinutes(minutes);
  }

  private void dry(ZonedDateTime from, ZonedDateTime until) {
    write(from, "dry", "into drying,F2,,,MA");
    cooler(from.plusMinutes(5), "dry", "F2", "MA");
    hold(from.plusMinutes(5), until, "dry", "F2", false);
    write(until.minusMinutes(3), "dry", "surface,,tacky,,MA");
    write(until, "dry", "out of drying,,,,MA");
    weight(until.plusMinutes(2), "dry", random.nextDouble(0.975, 0.99));
  }

  private ZonedDateTime at(int minute) {
    return course.load().plusMinutes(minute);
  }

  private void core(String sheet, int minute) {
    int piece = 0;
    for (int i = 1; i < course.pieces(); i++) {
      int here = course.firstPiece() + i;
      piece = run.pace(here) > run.pace(course.firstPiece() + piece) ? i : piece;
    }
    double level = run.core(course.firstPiece() + piece, minute);
    String cells = "internal temperature,thickest," + tools.byHand(level, "MA") + ",hand check";
    write(at(minute), sheet, piece, cells);
  }

  private void smoke() {
    write(at(0), "smoke", "into smoke," + course.smoker() + ",,,MA");
    write(at(1), "smoke", "wood,beech,,,MA");
    String air = "chamber temperature," + course.smoker() + ",";
    write(at(90), "smoke", air + tools.byHand(run.air(90), "MA"));
    if (habits.contains(Habit.HAND_ONLY)) {
      for (int minute = 0; minute < run.out() - 10; minute += 25) {
        core("smoke", minute);
      }
    }
    core("smoke", run.out() - 1);
    write(at(run.out()), "smoke", "out of smoke,,,,MA");
    weight(at(run.out() + 2), "smoke", random.nextDouble(0.89, 0.93));
    if (habits.contains(Habit.GLAZED)) {
      double whole = whole() * 1.012;
      write(at(run.out() + 9), "smoke", "glazed,treacle glaze TG-09," + tools.piece(whole));
      left *= 1.012;
    }
  }

  private void chill() {
    if (habits.contains(Habit.HAND_ONLY)) {
      chillByHand();
    }
    write(at(run.into()), "chill", "into chill," + course.fridge() + ",,,MA");
    cooler(at(run.into() + 2), "chill", course.fridge(), "MA");
    core("chill", run.end() - 4);
    write(at(run.end()), "chill", "out of chill,,,,MA");
    weight(at(run.end() + 2), "chill", random.nextDouble(0.982, 0.996));
  }

  /** Every few minutes down to 80 °F, which no log shows, and then now and again. */
  private void chillByHand() {
    int minute = run.out() + 8;
    for (; run.core(course.firstPiece(), minute - 8) > 80; minute += 8) {
      core(minute < run.into() ? "smoke" : "chill", minute);
    }
    for (; run.core(course.firstPiece(), minute - 25) > 39; minute += 25) {
      core("chill", minute);
    }
  }

  private void leave() {
    boolean next = habits.contains(Habit.SLICED_NEXT_DAY);
    ZonedDateTime sliced = next ? morningAfter(0).withHour(9) : at(run.end() + 30);
    double whole = whole();
    int packs = (int) (whole * 0.92 / 150);
    String packed = "packed," + packs + " packs," + tools.piece(150 * packs);
    write(sliced.plusMinutes(20), "dispatch", packed + ",packs of 150 g");
    write(sliced.plusMinutes(35), "dispatch", "ends,," + tools.piece(whole - 150 * packs - 15));
    write(sliced.plusMinutes(36), "dispatch", "waste,," + tools.piece(15));
    ZonedDateTime reviewed = morningAfter(1);
    write(reviewed, "dispatch", "reviewed,,,,IQ");
    String cold = "internal temperature,thickest," + tools.byHand(37.5, "MA");
    write(reviewed.plusMinutes(20), "dispatch", cold);
    String gone =
        String.format(Locale.ROOT, "dispatched,Saltmarsh Stores,%s", tools.piece(150 * packs));
    write(reviewed.plusMinutes(30), "dispatch", gone);
  }

  private ZonedDateTime morningAfter(int days) {
    ZonedDateTime end = at(run.end()).plusDays(1 + days);
    return end.withHour(8).withMinute(random.nextInt(30));
  }
}
