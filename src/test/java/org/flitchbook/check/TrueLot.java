package org.flitchbook.check;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/**
 * A lot whose core and air are known at every minute: heated along the published example curves,
 * hung, and chilled by Newton's law in a fridge that warms when it is loaded. In °F, minutes from
 * the load; between two minutes a straight line.
 */
final class TrueLot {

  /** A cut with its way through the smoke and how slowly it chills, in hours. */
  enum Cut {
    BELLY(
        0.5, 2.36, 1.49, 3.04, 0, 39.2, 30, 55.9, 60, 81.8, 90, 104.5, 120, 122.8, 150, 137.3, 185,
        150, 215, 158),
    JOWL(
        0.3, 1.58, 0.98, 2.05, 0, 39.2, 30, 67.6, 60, 100.5, 90, 125.3, 120, 143, 150, 156, 170,
        162),
    LOIN(
        3, 3.17, 2.05, 4.05, 0, 39.2, 30, 43.4, 60, 60.3, 90, 80.1, 120, 98.3, 150, 113.9, 180,
        127.1, 210, 138.1, 240, 147.1, 280, 157);

    private final double carry;

    @SuppressWarnings("ImmutableEnumChecker")
    private final double[] hours;

    @SuppressWarnings("ImmutableEnumChecker")
    private final double[] heat;

    Cut(double carry, double still, double fan, double crowded, double... heat) {
      this.carry = carry;
      this.hours = new double[] {still, fan, crowded};
      this.heat = heat;
    }

    private double at(double minute) {
      for (int i = 0; i + 3 < heat.length; i += 2) {
        if (minute <= heat[i + 2]) {
          double part = (minute - heat[i]) / (heat[i + 2] - heat[i]);
          return heat[i + 1] + part * (heat[i + 3] - heat[i + 1]);
        }
      }
      return heat[heat.length - 1];
    }

    private double minutesTo(double level) {
      double minute = 0;
      while (at(minute) < level && minute < heat[heat.length - 2]) {
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
   */
  TrueLot(SplittableRandom random, int warmed) {
    this.cut = Cut.values()[random.nextInt(3)];
    int kind = random.nextInt(10) < 6 ? 1 : random.nextInt(3);
    this.fridge = FRIDGES[kind].clone();
    fridge[0] += random.nextDouble(-1.5, 1.5);
    this.hours = cut.hours[kind] * random.nextDouble(0.75, 1.3);
    this.pace = random.nextDouble(0.9, 1.2);
    double finish =
        random.nextInt(4) == 0 ? random.nextDouble(134, 145) : random.nextDouble(146, 156);
    this.out = (int) Math.ceil(cut.minutesTo(finish) * pace);
    this.into = out + 20 + random.nextInt(25);
    heat(random);
    chill(random, warmed);
  }

  private void heat(SplittableRandom random) {
    double hot = random.nextDouble(190, 205);
    double period = random.nextDouble(20, 30);
    double swing = random.nextDouble(4, 8);
    for (int minute = 0; minute <= out; minute++) {
      double fire = 76 + (hot - 76) * -Math.expm1(-minute / 13.0);
      cores.add(cut.at(minute / pace));
      airs.add(fire + swing * sawtooth(minute, period) * -Math.expm1(-minute / 30.0));
    }
  }

  private void chill(SplittableRandom random, int warmed) {
    double warmedAt = warmed == 0 ? Double.NEGATIVE_INFINITY : random.nextDouble(39, 100);
    double period = random.nextDouble(15, 25);
    double core = cores.get(out);
    boolean cold = false;
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
      airs.add(air + (warm ? 0 : 1.5 * sawtooth(minute, period)));
      cold = (core <= 38.6 && (warmed == 0 || warmedFrom > 0) && !warm) || inFridge > LONGEST;
    }
  }

  private double fridge(int minute) {
    return fridge[0] + fridge[1] * Math.exp(-minute / fridge[2]);
  }

  private static double sawtooth(double minute, double period) {
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
