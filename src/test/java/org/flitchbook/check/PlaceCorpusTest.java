package org.flitchbook.check;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.SplittableRandom;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.Golden;
import org.flitchbook.SeededRun;
import org.flitchbook.input.Fault;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Logs of places made from known true curves, most of them damaged, and what is found on them. */
final class PlaceCorpusTest {

  private static final long SEED = 20261130;
  private static final int LOTS = 3_000;
  private static final int JUDGED = SeededRun.cases("PlaceCorpus", SEED, LOTS);

  /**
   * One lot.
   *
   * @param believed it looks good to whoever believes every plain number
   */
  private record Found(
      int number,
      PlaceDamage damage,
      PlaceLot lot,
      boolean believed,
      Verdict verdict,
      List<String> open) {

    static Found of(int number) {
      SplittableRandom random = new SplittableRandom(SEED + number);
      PlaceDamage[] all = PlaceDamage.values();
      PlaceDamage damage = all[number % all.length];
      PlaceLot lot = new PlaceLot(random, number / all.length % 2 == 0);
      damage.on(lot);
      boolean believed = lot.looksGood();
      Judgement judged = lot.judge();
      return new Found(
          number,
          damage,
          lot,
          believed,
          Bench.found(judged, "held").verdict(),
          judged.openFaults().stream().map(Fault::rule).distinct().toList());
    }

    boolean isMet() {
      return verdict == Verdict.MET && open.isEmpty();
    }

    boolean isFalsePass() {
      return lot.misses() && isMet();
    }

    boolean isFalseAlarm() {
      return !lot.misses() && damage.isHonest() && !isMet();
    }
  }

  private static List<Found> all = List.of();

  @BeforeAll
  static void judgeAll() {
    all = IntStream.range(0, JUDGED).mapToObj(Found::of).toList();
  }

  @Test
  void no_place_that_truly_missed_its_limit_is_found_to_have_met_it() {
    assertEquals(List.of(), all.stream().filter(Found::isFalsePass).toList());
  }

  /** Nor is anything asked where the log is silent for less than the plan lets pass. */
  @Test
  void no_place_that_met_its_limit_is_asked_about_where_its_log_is_honest() {
    assertEquals(List.of(), all.stream().filter(Found::isFalseAlarm).toList());
  }

  /** Else the first test would prove nothing. */
  @Test
  void whoever_believes_each_plain_number_finds_missed_limits_met() {
    for (PlaceDamage damage : PlaceDamage.values()) {
      boolean hides = damage != PlaceDamage.AS_IT_IS;
      assertEquals(
          hides,
          count(found -> found.damage == damage && found.lot.misses() && found.believed) > 0,
          damage.told());
    }
  }

  @Test
  void the_figures_are_those_that_were_found_before() {
    Golden.check(
        "check/places-" + SeededRun.known("tenth", "whole") + ".md",
        "| log of a place | lots | truly bad | of these, believed | found met | truly good | and"
            + " met |\n"
            + "|---|---|---|---|---|---|---|\n"
            + Stream.of(PlaceDamage.values())
                .map(PlaceCorpusTest::row)
                .collect(Collectors.joining()));
  }

  private static String row(PlaceDamage damage) {
    return "| %s | %d | %d | %d | %d | %d | %d |\n"
        .formatted(
            damage.told(),
            count(found -> found.damage == damage),
            count(found -> found.damage == damage && found.lot.misses()),
            count(found -> found.damage == damage && found.lot.misses() && found.believed),
            count(found -> found.damage == damage && found.isFalsePass()),
            count(found -> found.damage == damage && !found.lot.misses()),
            count(found -> found.damage == damage && !found.lot.misses() && found.isMet()));
  }

  private static long count(Predicate<Found> counted) {
    return all.stream().filter(counted).count();
  }
}
