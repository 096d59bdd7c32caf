package org.flitchbook.check;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/**
 * A lot whose core and air are known at every minute: heated along the published example curves,
 * hung, and chilled by Newton's law (two of three near the limits) in a fridge that warms when it
 * is loaded, and whose door is opened once. In °F, minutes from the load; between two minutes a
 * straight line.
 */
final class TrueLot {

  /** A cut with its way through the smoke and how slowly it chills, in hours. */
  enum Cut {
    BELLY(
        0.5, 2.36, 1.49, 3.04, 0.0, 39.2, 30.0, 55.9, 60.0, 81.8, 90.0, 104.5, 120.0, 122.8, 150.0,
        137.3, 185.0, 150.0, 215.0, 158.0),
    JOWL(
        0.3, 1.58, 0.98, 2.05, 0.0, 39.2, 30.0, 67.6, 60.0, 100.5, 90.0, 125.3, 120.0, 143.0, 150.0,
        156.0, 170.0, 162.0),
    LOIN(
        3.0, 3.17, 2.05, 4.05, 0.0, 39.2, 30.0, 43.4, 60.0, 60.3, 90.0, 80.1, 120.0, 98.3, 150.0,
        113.9, 180.0, 127.1, 210.0, 138.1, 240.0, 147.1, 280.0, 157.0);

    private final double carry;

    @SuppressWarnings("ImmutableEnumChecker")
    private final List<Double> hours;

    @SuppressWarnings("ImmutableEnumChecker")
    private final List<Double> heat;

    /**
     * @param heat minutes and levels by turns
     */
    Cut(double carry, double still, double fan, double crowded, Double... heat) {
      this.carry = carry;
      this.hours = List.of(still, fan, crowded);
      this.heat = List.of(heat);
    }

    private double at(double minute) {
      for (int i = 0; i + 3 < heat.size(); i += 2) {
        if (minute <= heat.get(i + 2)) {
          double part = (minute - heat.get(i)) / (heat.get(i + 2) - heat.get(i));
          return heat.get(i + 1) + part * (heat.get(i + 3) - heat.get(i + 1));
        }
      }
      return heat.get(heat.size() - 1);
    }

    private double minutesTo(double level) {
      double minute = 0;
      while (at(minute) < level && minute < heat.get(heat.size() - 2)) {
        minute += 0.5;
      }
      return minute;
    }
  }

  /** What it lies in: base, what the load adds, and in how many minutes that dies away. */
  private static final double[][] FRIDGES = {{37.4, 11, 120}, {34.7, 9, 60}, {42.8, 14, 240}};

  private static final int LONGEST = 16 * 60;

  private final Cut cut;
  private final double pace;
  private final double[] fridge;
  private final double hours;
  private final List<Double> cores = new ArrayList<>();
  private final List<Double> airs = new ArrayList<>();
  private final int out;
  private final int into;
  private int warmedFrom;
  private int warmedUntil;

  /**
   * @param warmed how long it stood in a warm room while it chilled; 0 where it did not
   * @param fireOut how long before the end of the smoke the fire died; 0 where it did not
   */
  TrueLot(SplittableRandom random, int warmed, int fireOut) {
    this.cut = Cut.values()[random.nextInt(3)];
    int kind = random.nextInt(10) < 6 ? 1 : random.nextInt(3);
    this.fridge = FRIDGES[kind].clone();
    fridge[0] += random.nextDouble(-1.5, 1.5);
    boolean near = random.nextInt(3) > 0;
    this.hours =
        near ? random.nextDouble(1.4, 2.2) : cut.hours.get(kind) * random.nextDouble(0.75, 1.3);
    this.pace = random.nextDouble(0.9, 1.2);
    double finish =
        random.nextInt(4) == 0 ? random.nextDouble(134, 145) : random.nextDouble(146, 156);
    this.out = (int) Math.ceil(cut.minutesTo(finish) * pace);
    this.into = out + 20 + random.nextInt(25);
    heat(random, out - fireOut);
    chill(random, warmed);
  }

  /** Once the fire has died, the core goes on at a third of its pace. */
  private void heat(SplittableRandom random, int died) {
    double hot = random.nextDouble(190, 205);
    double period = random.nextDouble(20, 30);
    double swing = random.nextDouble(4, 8);
    for (int minute = 0; minute <= out; minute++) {
      double after = Math.max(0, minute - died);
      double full = 110 + (hot - 110) * StrictMath.exp(-after / 25);
      double fire = 76 + (full - 76) * -StrictMath.expm1(-minute / 13.0);
      cores.add(cut.at((minute - after * 2 / 3) / pace));
      airs.add(fire + swing * sawtooth(minute, period) * -StrictMath.expm1(-minute / 30.0));
    }
  }

  private void chill(SplittableRandom random, int warmed) {
    double warmedAt = warmed == 0 ? Double.NEGATIVE_INFINITY : random.nextDouble(39, 100);
    double period = random.nextDouble(15, 25);
    double core = cores.get(out);
    boolean cold = false;
    int door = into + random.nextInt(240);
    for (int minute = out + 1; !cold; minute++) {
      int inFridge = minute - into;
      if (warmedFrom == 0 && inFridge > 0 && core < warmedAt) {
        warmedFrom = minute;
        warmedUntil = minute + warmed;
      }
      boolean warm = inFridge < 0 || (minute >= warmedFrom && minute < warmedUntil);
      double air = warm ? 64 : fridge(inFridge);
      core += minute - out <= 8 ? cut.carry / 8 : (air - core) / (60 * hours);
      cores.add(core);
      airs.add(air + (warm ? 0 : 1.5 * sawtooth(minute, period) + open(minute - door)));
      cold = (core <= 38.6 && (warmed == 0 || warmedFrom > 0) && !warm) || inFridge > LONGEST;
    }
  }

  /** What the door adds to the air, of which the core takes no notice. */
  private static double open(int minute) {
    return minute < 0 ? 0 : minute < 6 ? 1.2 * minute : 7 * StrictMath.exp(-(minute - 6) / 6.0);
  }

  private double fridge(int minute) {
    return fridge[0] + fridge[1] * StrictMath.exp(-minute / fridge[2]);
  }

  static double sawtooth(double minute, double period) {
    double part = minute / period - Math.floor(minute / period);
    return part < 0.7 ? 2 * part / 0.7 - 1 : 1 - 2 * (part - 0.7) / 0.3;
  }

  int warmedFrom() {
    return warmedFrom;
  }

  int warmedUntil() {
    return warmedUntil;
  }

  int out() {
    return out;
  }

  int into() {
    return into;
  }

  int end() {
    return cores.size() - 1;
  }

  double core(double minute) {
    return between(cores, minute);
  }

  /** Where the piece is thinner, and so some minutes ahead. */
  double thin(double minute) {
    return core(minute + 6);
  }

  double air(double minute) {
    return between(airs, minute);
  }

  private static double between(List<Double> all, double minute) {
    int before = Math.min((int) minute, all.size() - 1);
    int after = Math.min(before + 1, all.size() - 1);
    return all.get(before) + (minute - before) * (all.get(after) - all.get(before));
  }

  double peak() {
    return cores.stream().mapToDouble(Double::doubleValue).max().orElseThrow();
  }

  /** From the first time below the top after the peak to the last time above the bottom. */
  double fall(double top, double bottom) {
    int begin = cores.indexOf(peak());
    while (begin + 1 < cores.size() && cores.get(begin + 1) >= top) {
      begin++;
    }
    int end = cores.size() - 1;
    while (end > 0 && cores.get(end) <= bottom) {
      end--;
    }
    return end == cores.size() - 1
        ? Double.POSITIVE_INFINITY
        : crossing(end, bottom) - crossing(begin, top);
  }

  private double crossing(int before, double level) {
    double from = cores.get(before);
    double to = cores.get(before + 1);
    return from < level || from == to ? before : before + (from - level) / (from - to);
  }
}
