package org.flitchbook.check;

import static org.flitchbook.check.Said.remarks;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.flitchbook.plan.Succession;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A lot that was made under two versions of a plan. */
final class VersionsTest {

  private static final LocalDate UNTIL = LocalDate.parse("2026-02-20");

  /** 11.5 g of 6.25 % on 4812 g: 149.4 ppm. */
  private static Bench bench(String id, String floor) {
    return Bench.book()
        .own(
            id,
            "cure",
            "\"kind\": \"floor\", \"quantity\": \"ingoing nitrite\", \"atLeast\": \""
                + floor
                + "\"")
        .write(
            "cure,09:10,rind,,off",
            "cure,09:12,green weight,,4812,g",
            "cure,09:20,curing salt,C1,11.5,g",
            "cure,09:40,into cure,F1");
  }

  private static Judgement stricter(Bench now, Bench before) {
    FormerJudgement former = new FormerJudgement("0", UNTIL, before.judge());
    return Checks.stricter(now.plan(), now.judge(), List.of(former));
  }

  @ParameterizedTest(name = "before {0}, now {1}: {2}")
  @CsvSource({
    "150 ppm, 120 ppm, not met, 'by plan version 0, in force until 2026-02-20; version 1 gives"
        + " met'",
    "120 ppm, 150 ppm, not met, 'by plan version 1, the stricter here; version 0 gives met'",
    "120 ppm, 130 ppm, met,     'by plan version 1, the stricter here; version 0 gives met'",
    "120 ppm, 120 ppm, met,     ''",
    "150 ppm, 150 ppm, not met, ''",
  })
  void of_two_numbers_the_stricter_finding_counts(
      String before, String now, String verdict, String remark) {
    Judgement judged = stricter(bench("floor", now), bench("floor", before));
    Finding finding = Bench.found(judged, "floor");
    assertEquals(verdict, finding.verdict().words());
    assertEquals(remark, remarks(finding));
    assertEquals(1, count(judged, "floor"));
    assertEquals(verdict.equals("met") ? Verdict.NOT_SHOWN : Verdict.NOT_MET, judged.verdict());
  }

  @Test
  void a_limit_that_only_the_former_version_has_is_judged_too() {
    Judgement judged = stricter(bench("now", "120 ppm"), bench("before", "150 ppm"));
    assertEquals("met", Bench.found(judged, "now").verdict().words());
    assertEquals("", remarks(Bench.found(judged, "now")));
    Finding before = Bench.found(judged, "before");
    assertEquals("not met", before.verdict().words());
    assertEquals(
        "by plan version 0, in force until 2026-02-20; the plan of today has no such limit",
        remarks(before));
    assertEquals(1, count(judged, "plan.steps"));
  }

  private static long count(Judgement judged, String id) {
    return judged.findings().stream().filter(each -> each.limit().id().equals(id)).count();
  }

  /** A person of the plan names a version of it. */
  @ParameterizedTest(name = "{0}, {1}, {2}: {3}")
  @CsvSource({
    "plan changed, 1, MA, chosen",
    "plan changed, 2, MA, not",
    "stuck,        1, MA, not",
    "plan changed, 1, ZZ, not",
  })
  void a_person_says_which_version_counts(String item, String value, String by, String chosen) {
    Bench bench = bench("floor", "120 ppm");
    bench.write("actions,20:00:00,explained," + item + "," + value + ",," + by + ",,a slip");
    Succession versions = new Succession(List.of(bench.plan()));
    Optional<String> found = PlanChoice.of(bench.judge().lot(), versions).map(PlanChoice::version);
    assertEquals(chosen.equals("chosen") ? Optional.of("1") : Optional.empty(), found);
  }

  @Test
  void the_last_such_word_counts() {
    Bench bench = bench("floor", "120 ppm");
    bench.write(
        "actions,20:00:00,explained,plan changed,1,,MA,,a slip",
        "actions,21:00:00,explained,plan changed,1,,MA,,a slip indeed");
    Succession versions = new Succession(List.of(bench.plan()));
    PlanChoice choice = PlanChoice.of(bench.judge().lot(), versions).orElseThrow();
    assertEquals("2026-02-24/actions.csv:3", choice.entry().place().toString());
  }
}
