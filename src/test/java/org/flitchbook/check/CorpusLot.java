package org.flitchbook.check;

import java.util.List;
import java.util.SplittableRandom;
import java.util.function.UnaryOperator;
import org.flitchbook.input.Fault;

/**
 * One lot of the corpus: what was done to its log, how it truly was, how it looks to whoever
 * believes every row, and what was found.
 *
 * @param found on the peak, on the cooling, and what is open
 */
record CorpusLot(
    int number, List<Damage> damages, boolean peaks, boolean cools, boolean believed, Found found) {

  /** The house's finish in °F; the cooling is that of option 1, 130 to 80 °F and 80 to 40. */
  private static final double FINISH = 145;

  /** What was found. */
  record Found(Verdict peak, Verdict cooling, List<String> open) {

    static Found of(Judgement judged) {
      return new Found(
          Bench.found(judged, LoggedBook.FINISH).verdict(),
          Bench.found(judged, LoggedBook.COOLING).verdict(),
          judged.openFaults().stream().map(Fault::rule).toList());
    }

    boolean isMet() {
      return open.isEmpty() && peak == Verdict.MET && cooling == Verdict.MET;
    }
  }

  /** Every third lot is left as it is; of the others one in sixteen has damaged cells. */
  static CorpusLot of(long seed, int number) {
    return of(seed, number, bench -> bench);
  }

  /** The same lot, judged by anyone who believes every row. */
  static CorpusLot believed(long seed, int number) {
    return of(seed, number, Bench::believed);
  }

  private static CorpusLot of(long seed, int number, UnaryOperator<Bench> judge) {
    SplittableRandom random = new SplittableRandom(seed + number);
    List<Damage> damages =
        number % 3 == 0
            ? List.of()
            : number % 16 == 5 ? Damage.ofCells(number / 48) : Damage.some(random);
    boolean warms = damages.stream().anyMatch(Damage::warms);
    boolean dies = damages.contains(Damage.FIRE_OUT);
    TrueLot truth =
        new TrueLot(random, warms ? random.nextInt(30, 90) : 0, dies ? random.nextInt(20, 70) : 0);
    LoggedLot lot = new LoggedLot(truth, random);
    damages.forEach(damage -> damage.on(lot));
    Naive naive = lot.naive();
    return new CorpusLot(
        number,
        damages,
        truth.peak() >= FINISH,
        truth.fall(130, 80) <= 90 && truth.fall(80, 40) <= 300,
        naive.peak() >= FINISH && naive.cools(),
        Found.of(judge.apply(LoggedBook.of(lot)).judge()));
  }

  boolean isGood() {
    return peaks && cools;
  }

  /** Bad, and yet it looks good to whoever believes every row. */
  boolean wouldPass() {
    return !isGood() && believed;
  }

  /** A limit was found to be met that truly was missed. */
  boolean isFalsePass() {
    return (!peaks && found.peak() == Verdict.MET) || (!cools && found.cooling() == Verdict.MET);
  }

  boolean has(Damage damage) {
    return damages.contains(damage);
  }
}
