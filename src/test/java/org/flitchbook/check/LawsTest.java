package org.flitchbook.check;

import static org.flitchbook.check.Said.formulas;
import static org.flitchbook.check.Said.reasons;
import static org.flitchbook.check.Said.remarks;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import org.flitchbook.SeededRun;
import org.flitchbook.measure.Quantity;
import org.junit.jupiter.api.Test;

/** What holds for every lot, tried on lots at random. */
final class LawsTest {

  private static final long SEED = 20260228;
  private static final int LOTS = SeededRun.cases("Laws of lots", SEED, 120);
  private static final int ALL = Integer.MAX_VALUE;
  private static final String NITRITE = "\"quantity\": \"ingoing nitrite\", ";
  private static final String CORE = "\"what\": \"internal temperature\", ";

  /** The same limit ever tighter. */
  private record Ladder(String id, String step, String numbers, List<String> rungs) {

    Ladder(String id, String step, String numbers, String... rungs) {
      this(id, step, numbers, List.of(rungs));
    }

    void addTo(Bench bench, int most) {
      rungs.stream()
          .limit(most)
          .forEach(rung -> bench.own(name(rung), step, numbers.replace("RUNG", '"' + rung + '"')));
    }

    List<Verdict> verdicts(Judgement judged) {
      return rungs.stream().map(rung -> Bench.found(judged, name(rung)).verdict()).toList();
    }

    String name(String rung) {
      return id + "-" + rung.replaceAll("[^0-9a-zA-Z]", "");
    }
  }

  private static final List<Ladder> LADDERS =
      List.of(
          new Ladder(
              "ceiling",
              "cure",
              "\"kind\": \"ceiling\", " + NITRITE + "\"atMost\": RUNG",
              "240 ppm",
              "200 ppm",
              "199 ppm",
              "120 ppm"),
          new Ladder(
              "floor",
              "cure",
              "\"kind\": \"floor\", " + NITRITE + "\"atLeast\": RUNG",
              "80 ppm",
              "120 ppm",
              "200 ppm"),
          new Ladder(
              "length",
              "smoke",
              "\"kind\": \"duration\", \"from\": \"into smoke\", \"to\": \"out of smoke\", "
                  + "\"atMost\": RUNG",
              "30 min",
              "20 min",
              "12 min"),
          new Ladder(
              "span", "chill", span("\"130 °F\"", "RUNG"), "60 min", "40 min", "30 min", "20 min"),
          new Ladder(
              "hold",
              "smoke",
              table("\"138 °F\"", "RUNG"),
              "0 s",
              "1 min",
              "3 min",
              "6 min",
              "12 min"),
          new Ladder(
              "heat", "smoke", table("RUNG", "\"2 min\""), "126 °F", "138 °F", "142 °F", "147 °F"),
          new Ladder(
              "peak",
              "smoke",
              "\"kind\": \"floor\", \"quantity\": \"peak internal temperature\", \"atLeast\": RUNG",
              "126 °F",
              "135 °F",
              "145 °F",
              "151 °F"),
          new Ladder(
              "cold", "chill", cold("RUNG", "\"20 min\""), "130 °F", "110 °F", "90 °F", "75 °F"),
          new Ladder(
              "outside",
              "chill",
              cold("\"90 °F\"", "RUNG"),
              "60 min",
              "30 min",
              "20 min",
              "5 min"));

  private static String span(String from, String atMost) {
    return "\"kind\": \"span\", %s\"from\": %s, \"to\": \"80 °F\", \"atMost\": %s"
        .formatted(CORE, from, atMost);
  }

  private static String table(String atLeast, String time) {
    return "\"kind\": \"time-at-temperature\", %s\"rows\": [{\"atLeast\": %s, \"for\": %s}]"
        .formatted(CORE, atLeast, time);
  }

  private static String cold(String atMost, String allow) {
    return "\"kind\": \"holding\", %s\"atMost\": %s, \"every\": \"20 min\", \"allow\": %s"
        .formatted(CORE, atMost, allow);
  }

  private static Bench onLadders(int rungs) {
    Bench bench = Bench.book();
    LADDERS.forEach(ladder -> ladder.addTo(bench, rungs));
    return bench;
  }

  private static String grams(long hundredths) {
    return BigDecimal.valueOf(hundredths, 2).toPlainString();
  }

  /**
   * Rind, weights and cure, with one piece or two.
   *
   * @param apart the minutes from one weighing of cure to the next
   * @param salts in hundredths of a gram
   */
  private static void cure(Bench bench, SplittableRandom random, int apart, long... salts) {
    boolean rind = random.nextBoolean();
    int pieces = 1 + random.nextInt(2);
    bench.write("cure,05:00,rind,," + (rind ? "on" : "off"));
    for (int piece = 1; piece <= pieces; piece++) {
      String end = ",g,MA,S-10,,," + (pieces == 1 ? "" : piece);
      int green = 3000 + random.nextInt(3000);
      bench.write("cure,05:10,green weight,," + green + end);
    }
    for (int i = 0; i < salts.length; i++) {
      String piece = pieces == 1 ? "" : String.valueOf(1 + random.nextInt(pieces));
      String cure = List.of("C1", "C2", "CK").get(random.nextInt(3)) + "," + grams(salts[i]);
      int minute = 20 + apart * i;
      bench.write("cure,05:" + minute + ",curing salt," + cure + ",g,MA,S-001,,," + piece);
    }
    bench.write("cure,05:30,into cure,F1", "cure,06:30,out of cure");
  }

  private static long[] salts(SplittableRandom random) {
    return random.longs(1 + random.nextInt(4), 50, 900).toArray();
  }

  private static Bench nitrite(long seed, long... salts) {
    String ceiling = "\"kind\": \"ceiling\", " + NITRITE + "\"atMost\": \"200 ppm\"";
    Bench bench = Bench.book().own("ceiling", "cure", ceiling);
    cure(bench, new SplittableRandom(seed), 0, salts);
    return bench;
  }

  @Test
  void more_curing_salt_never_lowers_the_nitrite() {
    Set<Verdict> seen = new HashSet<>();
    int raised = 0;
    for (long seed = SEED; seed < SEED + LOTS; seed++) {
      SplittableRandom random = new SplittableRandom(-seed);
      long[] less = salts(random);
      long[] more = less.clone();
      more[random.nextInt(more.length)] += 1 + random.nextInt(500);
      Finding before = nitrite(seed, less).finding("ceiling");
      Finding after = nitrite(seed, more).finding("ceiling");
      String message = "lot of seed " + seed + ": " + formulas(before) + ", " + formulas(after);
      if (before.measured().isPresent()) {
        Quantity ppm = before.measured().get().value();
        assertFalse(after.measured().orElseThrow().value().isBelow(ppm), message);
        raised += after.measured().get().value().isAbove(ppm) ? 1 : 0;
      }
      assertFalse(before.verdict() == Verdict.NOT_MET && after.verdict() == Verdict.MET, message);
      seen.add(before.verdict());
    }
    assertEquals(SeededRun.known(11, 91), raised, "lots with more nitrite");
    assertEquals(Set.of(Verdict.MET, Verdict.NOT_MET, Verdict.NOT_SHOWN), seen);
  }

  private static Bench lot(long seed, Bench bench) {
    SplittableRandom random = new SplittableRandom(seed);
    cure(bench, random, 1, salts(random));
    return new RandomLot(random, bench).bench();
  }

  @Test
  void a_tighter_limit_is_never_met_where_a_looser_one_is_missed() {
    Set<String> seen = new HashSet<>();
    for (long seed = SEED; seed < SEED + LOTS; seed++) {
      Judgement judged = lot(seed, onLadders(ALL)).judge();
      for (Ladder ladder : LADDERS) {
        List<Verdict> verdicts = ladder.verdicts(judged);
        assertTrue(isLawful(verdicts), ladder.id() + " in the lot of seed " + seed + verdicts);
        verdicts.forEach(verdict -> seen.add(ladder.id() + " " + verdict.words()));
      }
    }
    List<String> oneSided =
        LADDERS.stream()
            .map(Ladder::id)
            .filter(id -> !seen.containsAll(List.of(id + " met", id + " not met")))
            .toList();
    assertEquals(SeededRun.known(List.of("cold", "outside"), List.of()), oneSided, seen.toString());
  }

  /** From the loosest to the tightest: once it is missed it is not met again. */
  private static boolean isLawful(List<Verdict> verdicts) {
    int missed = verdicts.indexOf(Verdict.NOT_MET);
    return missed < 0 || !verdicts.subList(missed, verdicts.size()).contains(Verdict.MET);
  }

  /** Else the laws would prove nothing: each of them can be broken. */
  @Test
  void a_ladder_upside_down_and_another_lot_are_noticed() {
    Judgement judged = lot(SEED, onLadders(ALL)).judge();
    List<String> noticed = new ArrayList<>();
    for (Ladder ladder : LADDERS) {
      List<Verdict> verdicts = new ArrayList<>(ladder.verdicts(judged));
      Collections.reverse(verdicts);
      noticed.addAll(isLawful(verdicts) ? List.of() : List.of(ladder.id()));
    }
    assertEquals(List.of("length", "span", "hold", "heat", "peak"), noticed);
    assertNotEquals(said(judged), said(lot(SEED + 1, onLadders(ALL)).judge()));
  }

  /** All that is said of a lot, but for the numbers of lines. */
  private static List<String> said(Judgement judged) {
    List<String> said = new ArrayList<>();
    said.add(judged.verdict().words());
    for (Finding finding : judged.findings()) {
      said.add(withoutLines(finding));
      finding.evidence().stream()
          .map(place -> finding.limit().id() + " by " + place.file() + " " + place.column())
          .sorted()
          .forEach(said::add);
    }
    judged.faults().stream().map(LawsTest::withoutLines).sorted().forEach(said::add);
    return said;
  }

  private static String withoutLines(Finding finding) {
    return withoutLines(
        List.of(
            finding.limit().id(),
            finding.verdict().words(),
            finding.measured(),
            formulas(finding),
            reasons(finding),
            remarks(finding),
            finding.parts()));
  }

  private static String withoutLines(Object said) {
    return said.toString().replaceAll("\\.csv:\\d+", ".csv");
  }

  @Test
  void the_order_of_the_rows_changes_nothing() {
    for (long seed = SEED; seed < SEED + LOTS; seed++) {
      Bench bench = lot(seed, onLadders(1));
      List<String> before = said(bench.judge());
      List<String> after = said(bench.shuffled(new SplittableRandom(-seed)).judge());
      assertEquals(String.join("\n", before), String.join("\n", after), "lot of seed " + seed);
    }
  }

  /** The sum names the weighings of one minute in the order of the sheet; what it gives is one. */
  @Test
  void weighings_of_one_minute_count_alike_in_any_order() {
    for (long seed = SEED; seed < SEED + LOTS; seed++) {
      Bench bench = nitrite(seed, salts(new SplittableRandom(-seed)));
      Finding before = bench.finding("ceiling");
      Finding after = bench.shuffled(new SplittableRandom(-seed)).finding("ceiling");
      assertEquals(before.verdict(), after.verdict(), "lot of seed " + seed);
      assertEquals(figures(before), figures(after), "lot of seed " + seed);
    }
  }

  private static Optional<List<Object>> figures(Finding finding) {
    return finding.measured().map(LawsTest::figures);
  }

  private static List<Object> figures(Measured measured) {
    return List.of(
        measured.value(), measured.limit(), measured.margin(), measured.uncertainty().toString());
  }
}
