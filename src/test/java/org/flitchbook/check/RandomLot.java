package org.flitchbook.check;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;

/**
 * A lot at random: one or two probes with gaps, written to the second or minute, and hand readings.
 */
final class RandomLot {

  private static final long HALF = 500;

  private final SplittableRandom random;
  private final Bench bench;
  private final List<Oracle.Reading> hands = new ArrayList<>();
  private final List<List<Oracle.Reading>> logs = new ArrayList<>();
  private final List<Long> intervals = new ArrayList<>();
  private final long out;

  RandomLot(SplittableRandom random, Bench bench) {
    this.random = random;
    this.bench = bench;
    this.out = 60L * (10 + random.nextInt(25));
    bench.write(
        "smoke," + clock(0, true) + ",into smoke,SM",
        "smoke," + clock(out, true) + ",out of smoke",
        "chill," + clock(out + 60, true) + ",into chill,F2",
        "chill," + clock(9000, true) + ",out of chill");
    int probes = 1 + random.nextInt(2);
    for (int probe = 1; probe <= probes; probe++) {
      probe("P" + probe);
    }
    for (int hand = random.nextInt(4); hand > 0; hand--) {
      hand();
    }
    hands.sort(Comparator.comparing(Oracle.Reading::early));
  }

  long out() {
    return out;
  }

  Bench bench() {
    return bench;
  }

  List<Oracle> probes() {
    List<Oracle> probes = new ArrayList<>();
    for (int i = 0; i < logs.size(); i++) {
      List<Oracle.Reading> all = new ArrayList<>(logs.get(i));
      all.addAll(hands);
      all.sort(Comparator.comparing(Oracle.Reading::early));
      probes.add(new Oracle(all, intervals.get(i)));
    }
    return probes;
  }

  private void probe(String name) {
    boolean toTheSecond = random.nextBoolean();
    boolean exact = random.nextBoolean();
    List<Oracle.Reading> log = new ArrayList<>();
    StringBuilder text = new StringBuilder();
    long[] shape = shape();
    for (long at = 0; at < 7200; at += 60) {
      if (random.nextInt(40) == 0) {
        at += 60L * random.nextInt(15);
      }
      long second = toTheSecond ? at + random.nextInt(3) : at;
      long level = HALF * Math.round(level(shape, at) / (double) HALF) + HALF * noise();
      log.add(
          new Oracle.Reading(
              second, toTheSecond ? second : second + 60, level, exact ? 0 : HALF, false));
      text.append(text.isEmpty() ? "" : "; ")
          .append(clock(second, toTheSecond))
          .append(' ')
          .append(degrees(level));
    }
    logs.add(log);
    intervals.add(median(log));
    bench.core(name, exact ? "LG-0" : "LG-A", text.toString());
  }

  private static long median(List<Oracle.Reading> log) {
    List<Long> steps = new ArrayList<>();
    for (int i = 1; i < log.size(); i++) {
      steps.add(log.get(i).early() - log.get(i - 1).early());
    }
    steps.sort(Comparator.naturalOrder());
    return steps.get(steps.size() / 2);
  }

  private int noise() {
    return switch (random.nextInt(12)) {
      case 0 -> -1;
      case 1 -> 1;
      default -> 0;
    };
  }

  /** Peak, when it is reached, when it ends, and when the core is at 70 °F. */
  private long[] shape() {
    long peak = 1000L * (126 + random.nextInt(27));
    long reached = 60L * (5 + random.nextInt(8));
    long left = reached + 60L * random.nextInt(10);
    return new long[] {peak, reached, left, left + 60L * (22 + random.nextInt(32))};
  }

  private static long level(long[] shape, long at) {
    if (at < shape[1]) {
      return 60_000 + (shape[0] - 60_000) * at / shape[1];
    }
    if (at < shape[2]) {
      return shape[0];
    }
    return at < shape[3]
        ? shape[0] - (shape[0] - 70_000) * (at - shape[2]) / (shape[3] - shape[2])
        : 70_000;
  }

  private void hand() {
    boolean toTheSecond = random.nextBoolean();
    boolean exact = random.nextBoolean();
    long at = toTheSecond ? random.nextInt(7200) : 60L * random.nextInt(120);
    boolean like = random.nextBoolean();
    long near =
        logs.get(0).stream()
            .filter(each -> each.early() <= at)
            .reduce((a, b) -> b)
            .map(Oracle.Reading::level)
            .orElse(60_000L);
    long level = like ? near + HALF * (random.nextInt(5) - 2) : 1000L * (60 + random.nextInt(100));
    hands.add(new Oracle.Reading(at, toTheSecond ? at : at + 60, level, exact ? 0 : 1000, true));
    bench.write(
        "smoke,"
            + clock(at, toTheSecond)
            + ",internal temperature,thickest,"
            + degrees(level)
            + ",°F,MA,"
            + (exact ? "HT-0" : "HT-1"));
  }

  private static String degrees(long level) {
    return String.format(Locale.ROOT, "%d.%03d", level / 1000, level % 1000);
  }

  private static String clock(long second, boolean toTheSecond) {
    String minute = String.format(Locale.ROOT, "%02d:%02d", 8 + second / 3600, second / 60 % 60);
    return toTheSecond ? minute + String.format(Locale.ROOT, ":%02d", second % 60) : minute;
  }
}
