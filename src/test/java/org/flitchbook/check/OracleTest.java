package org.flitchbook.check;

import static org.flitchbook.check.Said.reasons;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Lots at random, judged beside an oracle that tries every pair of readings. */
final class OracleTest {

  private static final long SEED = 20260224;
  private static final int LOTS = 3_000;
  private static final String SPAN =
      "\"kind\": \"span\", \"what\": \"internal temperature\", \"from\": \"130 °F\", \"to\": \"80"
          + " °F\", \"atMost\": \"30 min\"";
  private static final String TABLE =
      "\"kind\": \"time-at-temperature\", \"what\": \"internal temperature\", \"rows\":"
          + " [{\"atLeast\": \"138 °F\", \"for\": \"6 min\"}, {\"atLeast\": \"142 °F\", \"for\":"
          + " \"2 min\"}, {\"atLeast\": \"147 °F\", \"for\": \"0 s\"}]";

  private static RandomLot lot(int number) {
    SplittableRandom random = new SplittableRandom(SEED + number);
    return new RandomLot(
        random, Bench.book().own("span", "chill", SPAN).own("table", "smoke", TABLE));
  }

  private static boolean holds(Oracle probe, long out) {
    return probe.holds(138_000, 360, 0, out)
        || probe.holds(142_000, 120, 0, out)
        || probe.holds(147_000, 0, 0, out);
  }

  @Test
  void what_is_met_is_met_by_every_pair_of_readings_and_nothing_else_is() {
    int span = 0;
    int table = 0;
    for (int i = 0; i < LOTS; i++) {
      RandomLot lot = lot(i);
      String message = "lot of seed " + (SEED + i);
      List<Oracle> probes = lot.probes();
      Judgement judged = lot.bench().judge();
      boolean doubted = !judged.openFaults().isEmpty();
      boolean falls = probes.stream().allMatch(probe -> probe.falls(130_000, 80_000, 1800));
      boolean held = probes.stream().allMatch(probe -> holds(probe, lot.out()));
      span += agree(message + ", span", falls, doubted, Bench.found(judged, "span"));
      table += agree(message + ", table", held, doubted, Bench.found(judged, "table"));
      if (Bench.found(judged, "span").verdict() == Verdict.MET) {
        probes.forEach(p -> assertFalse(p.isSeenLonger(130_000, 80_000, 1800), message));
      }
    }
    assertTrue(span > LOTS / 20 && table > LOTS / 20, span + " spans met, " + table + " tables");
  }

  private static int agree(String message, boolean met, boolean doubted, Finding finding) {
    boolean said = finding.verdict() == Verdict.MET;
    assertEquals(met, said || (met && doubted), message + ": " + reasons(finding));
    return said ? 1 : 0;
  }
}
