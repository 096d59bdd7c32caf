package org.flitchbook.check;

import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.flitchbook.input.Fault;
import org.junit.jupiter.api.Test;

final class CorpusTest {

  private static final long SEED = 20261101;
  private static final int LOTS = Integer.getInteger("lots", 3_600);

  record Judged(
      int number,
      List<Damage> damages,
      TrueLot truth,
      Judgement judgement,
      boolean bad,
      boolean naive) {
    boolean isMet() {
      return judgement.openFaults().isEmpty()
          && Bench.found(judgement, "finish").verdict() == Verdict.MET
          && Bench.found(judgement, LoggedLot.LIMIT).verdict() == Verdict.MET;
    }

    boolean isFalsePass() {
      boolean peak =
          truth.peak() < 145 && Bench.found(judgement, "finish").verdict() == Verdict.MET;
      boolean cooling =
          misses(truth) && Bench.found(judgement, LoggedLot.LIMIT).verdict() == Verdict.MET;
      return peak || cooling;
    }
  }

  static boolean misses(TrueLot truth) {
    return truth.fall(130, 80) > 90 || truth.fall(80, 40) > 300;
  }

  private static Judged judged(int number) {
    SplittableRandom random = new SplittableRandom(SEED + number);
    List<Damage> damages = number % 3 == 0 ? List.of() : Damage.some(random);
    boolean warms = damages.stream().anyMatch(Damage::warms);
    TrueLot truth = new TrueLot(random, warms ? random.nextInt(30, 90) : 0);
    LoggedLot lot = new LoggedLot(truth, random);
    damages.forEach(damage -> damage.on(lot));
    Judgement judgement = lot.bench().judge();
    return new Judged(
        number, damages, truth, judgement, misses(truth) || truth.peak() < 145, false);
  }

  @Test
  void corpus() {
    List<Judged> all =
        (System.getProperty("only") != null
                ? java.util.Arrays.stream(System.getProperty("only").split(","))
                    .mapToInt(Integer::parseInt)
                : IntStream.range(0, LOTS).parallel())
            .mapToObj(CorpusTest::judged)
            .toList();
    int good = 0;
    int asked = 0;
    int met = 0;
    Map<String, Integer> why = new TreeMap<>();
    for (Judged each : all) {
      if (each.damages().isEmpty() && !each.bad()) {
        good++;
        met += each.isMet() ? 1 : 0;
        if (!each.judgement().openFaults().isEmpty()) {
          asked++;
          for (Fault f : each.judgement().openFaults()) {
            why.merge(f.rule(), 1, Integer::sum);
            if (asked < 15) System.out.println("  " + each.number() + " " + f.rule() + " " + f);
          }
        }
      }
    }
    for (Judged each : all)
      if (each.damages().isEmpty()
          && !each.bad()
          && !each.isMet()
          && each.judgement().openFaults().isEmpty()
          && each.number() < 300)
        System.out.println(
            "not met: "
                + each.number()
                + " "
                + each.truth().peak()
                + " "
                + each.truth().fall(130, 80)
                + " "
                + each.truth().fall(80, 40)
                + Bench.found(each.judgement(), "finish").reason()
                + Bench.found(each.judgement(), LoggedLot.LIMIT).reason());
    System.out.println("good " + good + " asked " + asked + " met " + met + " " + why);
    Map<Damage, int[]> table = new TreeMap<>();
    int falsePasses = 0;
    for (Judged each : all) {
      for (Damage d : each.damages()) {
        int[] row = table.computeIfAbsent(d, k -> new int[6]);
        row[0]++;
        row[1] += each.bad() ? 1 : 0;
        row[2] += each.isMet() ? 1 : 0;
        row[3] += each.judgement().verdict() == Verdict.NOT_SHOWN ? 1 : 0;
        row[4] += each.judgement().verdict() == Verdict.NOT_MET ? 1 : 0;
        row[5] += each.isFalsePass() ? 1 : 0;
      }
      if (each.isFalsePass()) {
        falsePasses++;
        if (falsePasses < 40) {
          System.out.println(
              "FALSE "
                  + each.number()
                  + " "
                  + each.damages()
                  + " peak "
                  + each.truth().peak()
                  + " falls "
                  + each.truth().fall(130, 80)
                  + " "
                  + each.truth().fall(80, 40)
                  + " out "
                  + each.truth().out()
                  + " into "
                  + each.truth().into()
                  + " end "
                  + each.truth().end());
          System.out.println(
              "      "
                  + each.judgement().verdict()
                  + " "
                  + Bench.found(each.judgement(), LoggedLot.LIMIT).formula());
          for (Fault f : each.judgement().faults())
            System.out.println("      " + f.severity().word() + " " + f.rule() + " " + f.found());
        }
      }
    }
    table.forEach(
        (d, row) ->
            System.out.println(
                d
                    + " lots "
                    + row[0]
                    + " bad "
                    + row[1]
                    + " met "
                    + row[2]
                    + " notshown "
                    + row[3]
                    + " notmet "
                    + row[4]
                    + " FALSE "
                    + row[5]));
    System.out.println("false passes " + falsePasses);
  }
}
