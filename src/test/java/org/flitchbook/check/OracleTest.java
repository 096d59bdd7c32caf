package org.flitchbook.check;

import static org.flitchbook.check.Said.reasons;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.flitchbook.SeededRun;
import org.junit.jupiter.api.Test;

/** Lots at random, judged beside an oracle that tries every pair of readings. */
final class OracleTest {

  private static final long SEED = 20260224;
  private static final int LOTS = SeededRun.cases("Lots beside the oracle", SEED, 3_000);
  private static final String TABLE =
      "\"kind\": \"time-at-temperature\", \"what\": \"internal temperature\", \"rows\":"
          + " [{\"atLeast\": \"138 °F\", \"for\": \"6 min\"}, {\"atLeast\": \"142 °F\", \"for\":"
          + " \"2 min\"}, {\"atLeast\": \"147 °F\", \"for\": \"0 s\"}]";

  private static String span(String atMost) {
    return "\"kind\": \"span\", \"what\": \"internal temperature\", \"from\": \"130 °F\", \"to\":"
        + " \"80 °F\", \"atMost\": \""
        + atMost
        + "\"";
  }

  private static boolean holds(Oracle probe, long out) {
    return probe.holds(138_000, 360, 0, out)
        || probe.holds(142_000, 120, 0, out)
        || probe.holds(147_000, 0, 0, out);
  }

  /**
   * One lot of both.
   *
   * @param wrong where the verdict is not that of the oracle
   */
  private record Compared(boolean span, boolean table, List<String> wrong) {

    /**
     * @param span what the program is told; the oracle has 30 minutes
     */
    static Compared of(int number, String span) {
      SplittableRandom random = new SplittableRandom(SEED + number);
      Bench book = Bench.book().own("span", "chill", span).own("table", "smoke", TABLE);
      RandomLot lot = new RandomLot(random, book);
      List<Oracle> probes = lot.probes();
      Judgement judged = lot.bench().judge();
      boolean doubted = !judged.openFaults().isEmpty();
      boolean spanMet = isMet(judged, "span");
      boolean tableMet = isMet(judged, "table");
      List<String> wrong = new ArrayList<>();
      if (!agree(probes.stream().allMatch(p -> p.falls(130_000, 80_000, 1800)), doubted, spanMet)) {
        wrong.add("span: " + reasons(Bench.found(judged, "span")));
      }
      if (!agree(probes.stream().allMatch(p -> holds(p, lot.out())), doubted, tableMet)) {
        wrong.add("table: " + reasons(Bench.found(judged, "table")));
      }
      if (spanMet && probes.stream().anyMatch(p -> p.isSeenLonger(130_000, 80_000, 1800))) {
        wrong.add("span: seen longer");
      }
      return new Compared(spanMet, tableMet, wrong);
    }

    private static boolean isMet(Judgement judged, String limit) {
      return Bench.found(judged, limit).verdict() == Verdict.MET;
    }

    /** What is doubted may be not met where the oracle, which doubts nothing, says that it is. */
    private static boolean agree(boolean met, boolean doubted, boolean said) {
      return met == (said || (met && doubted));
    }
  }

  @Test
  void what_is_met_is_met_by_every_pair_of_readings_and_nothing_else_is() {
    List<Compared> lots = new ArrayList<>();
    for (int i = 0; i < LOTS; i++) {
      lots.add(Compared.of(i, span("30 min")));
      assertEquals(List.of(), lots.get(i).wrong(), "lot of seed " + (SEED + i));
    }
    List<Compared> first = lots.subList(0, 300);
    assertEquals(72, first.stream().filter(Compared::span).count(), "spans met of the first 300");
    assertEquals(50, first.stream().filter(Compared::table).count(), "tables met of these");
  }

  /** Else the first test would prove nothing. */
  @Test
  void a_limit_that_is_a_minute_off_is_noticed() {
    assertTrue(
        IntStream.range(0, LOTS)
            .anyMatch(number -> !Compared.of(number, span("31 min")).wrong().isEmpty()));
  }
}
