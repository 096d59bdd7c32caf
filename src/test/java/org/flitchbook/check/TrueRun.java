package org.flitchbook.check;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.DoublePredicate;

/**
 * Pieces that hang in one smoker and then lie in one fridge, known at every minute: the air warms
 * and cools what is under the surface, and that the core. In °F, minutes from the load; between two
 * minutes a straight line.
 */
final class TrueRun {

  private static final double ROOM = 64;

  private static final double UNDER_THE_SURFACE_HEATS = 20;
  private static final double CORE_HEATS = 105;
  private static final double UNDER_THE_SURFACE_CHILLS = 15;
  private static final double CORE_CHILLS = 58;

  /** Below 40 °F by more than the error of a thermometer by hand. */
  private static final double COLD = 38.2;

  /**
   * How it is run.
   *
   * @param paces how slow each piece is, around 1
   * @param coldSmoke minutes of smoke before the heat
   * @param basted whether the smoker is opened
   * @param fridge its air, without what the load adds
   * @param least minutes from the load to the end, at the least
   */
  record Way(List<Double> paces, int coldSmoke, boolean basted, double fridge, int least) {}

  private final Way way;
  private final List<double[]> now = new ArrayList<>();
  private final List<List<Double>> cores = new ArrayList<>();
  private final List<Double> airs = new ArrayList<>();
  private final double hot;
  private final double swing;
  private final double period;
  private final int basting;
  private final int out;
  private final int into;

  TrueRun(SplittableRandom random, Way way) {
    this.way = way;
    this.hot = random.nextDouble(185, 200);
    this.swing = random.nextDouble(3, 7);
    this.period = random.nextDouble(15, 30);
    this.basting = way.basted() ? way.coldSmoke() + 60 + random.nextInt(30) : Integer.MAX_VALUE;
    for (int i = 0; i < way.paces().size(); i++) {
      double load = random.nextDouble(36.5, 39.5);
      now.add(new double[] {load, load});
      cores.add(new ArrayList<>());
    }
    double finish = random.nextDouble(149, 153);
    while (coldest() < finish) {
      pass(smoker(airs.size()), UNDER_THE_SURFACE_HEATS, CORE_HEATS);
    }
    this.out = airs.size() - 1;
    this.into = out + 15 + random.nextInt(20);
    while (warmest() > COLD || airs.size() <= way.least()) {
      pass(after(airs.size()), UNDER_THE_SURFACE_CHILLS, CORE_CHILLS);
    }
  }

  private double coldest() {
    return now.stream().mapToDouble(piece -> piece[1]).min().orElseThrow();
  }

  private double warmest() {
    return now.stream().mapToDouble(piece -> piece[1]).max().orElseThrow();
  }

  /** A minute in such air. */
  private void pass(double air, double surface, double core) {
    airs.add(air);
    for (int i = 0; i < now.size(); i++) {
      double[] piece = now.get(i);
      cores.get(i).add(piece[1]);
      piece[1] += (piece[0] - piece[1]) / (core * way.paces().get(i));
      piece[0] += (air - piece[0]) / surface;
    }
  }

  private double smoker(int minute) {
    double inHeat = minute - way.coldSmoke();
    double wave = TrueLot.sawtooth(minute, period);
    if (inHeat < 0) {
      return 68 + 2 * wave;
    }
    double open = minute < basting ? 0 : 55 * StrictMath.exp(-(minute - basting) / 4.0);
    double fire = 76 + (hot - 76) * -StrictMath.expm1(-inHeat / 13.0);
    return fire + swing * wave * -StrictMath.expm1(-inHeat / 30.0) - open;
  }

  /** In the room, then in the fridge that the load has warmed. */
  private double after(int minute) {
    double load = 8 * StrictMath.exp(-(minute - into) / 60.0);
    return minute < into ? ROOM : way.fridge() + load + 1.2 * TrueLot.sawtooth(minute, 20);
  }

  int out() {
    return out;
  }

  int into() {
    return into;
  }

  int end() {
    return airs.size() - 1;
  }

  int pieces() {
    return cores.size();
  }

  /** The piece that is heated and chilled last. */
  int slowest() {
    int slowest = 0;
    for (int i = 1; i < pieces(); i++) {
      slowest = way.paces().get(i) > way.paces().get(slowest) ? i : slowest;
    }
    return slowest;
  }

  double pace(int piece) {
    return way.paces().get(piece);
  }

  double core(int piece, double minute) {
    return between(cores.get(piece), minute);
  }

  double air(double minute) {
    return between(airs, minute);
  }

  private static double between(List<Double> all, double minute) {
    int before = (int) Math.max(0, Math.min(minute, all.size() - 1));
    int after = Math.min(before + 1, all.size() - 1);
    return all.get(before) + Math.max(0, minute - before) * (all.get(after) - all.get(before));
  }

  /** Whether every limit of the plan is met with room: 145 °F, 6 h, 1.5 h and 5 h. */
  boolean isGood() {
    return peak() > 148 && rise(50, 130) < 330 && fall(130, 80) < 75 && fall(80, 40) < 270;
  }

  /** The least of the pieces' highest. */
  private double peak() {
    return cores.stream()
        .mapToDouble(core -> core.stream().mapToDouble(Double::doubleValue).max().orElseThrow())
        .min()
        .orElseThrow();
  }

  /** The longest time that a piece takes to rise from one level to another. */
  private int rise(double from, double to) {
    return cores.stream()
        .mapToInt(core -> first(core, 0, level -> level >= to) - first(core, 0, l -> l >= from))
        .max()
        .orElseThrow();
  }

  /** The longest time that a piece takes to fall from one level to another after the smoke. */
  private int fall(double from, double to) {
    return cores.stream()
        .mapToInt(core -> first(core, out, level -> level < to) - first(core, out, l -> l < from))
        .max()
        .orElseThrow();
  }

  private static int first(List<Double> core, int since, DoublePredicate wanted) {
    int minute = since;
    while (!wanted.test(core.get(minute))) {
      minute++;
    }
    return minute;
  }
}
