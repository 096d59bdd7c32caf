package org.flitchbook.check;

import static org.flitchbook.check.Said.reasons;
import static org.flitchbook.check.Said.remarks;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.flitchbook.plan.Rank;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** From findings to a lot's verdict: conditions, doubts, groups, what a class asks for, faults. */
final class VerdictsTest {

  private static final String MET =
      "\"kind\": \"duration\", \"from\": \"into cure\", \"to\": \"out of cure\", \"atMost\": \"2"
          + " h\"";
  private static final String NOT_MET = MET.replace("2 h", "30 min");
  private static final String NOT_SHOWN =
      "\"kind\": \"holding\", \"what\": \"cooler temperature\", \"atMost\": \"41 °F\", \"every\":"
          + " \"30 min\"";

  /** A product with one step, whose class is covered. */
  private static Bench covered() {
    Bench bench =
        Bench.book()
            .product("steps", "[\"cure\"]")
            .write("cure,09:00,into cure,F1", "cure,10:00,out of cure");
    for (String covers :
        List.of("nitrite ceiling", "nitrate", "cold holding", "come-up", "cooling")) {
      bench.covers("own." + covers.replace(' ', '-'), covers, "cure", MET);
    }
    return bench;
  }

  private static Verdict verdict(Bench bench) {
    return bench.judge().verdict();
  }

  @Test
  void the_worst_critical_finding_is_the_lots_verdict() {
    assertEquals(Verdict.MET, verdict(covered()));
    assertEquals(Verdict.NOT_SHOWN, verdict(covered().own("a", "cure", NOT_SHOWN)));
    assertEquals(
        Verdict.NOT_MET, verdict(covered().own("a", "cure", NOT_SHOWN).own("b", "cure", NOT_MET)));
    assertEquals(Verdict.MET, verdict(covered().own("a", "cure", "operating", NOT_MET)));
    assertEquals(Verdict.MET, verdict(covered().own("a", "cure", "record", NOT_MET)));
  }

  @Test
  void what_is_pending_is_worse_than_met_and_better_than_not_shown() {
    String review = "\"kind\": \"entry\", \"what\": \"reviewed\"";
    assertEquals(Verdict.PENDING, verdict(covered().own("a", "release", review)));
    assertEquals(
        Verdict.NOT_SHOWN,
        verdict(covered().own("a", "release", review).own("b", "cure", NOT_SHOWN)));
  }

  @Test
  void each_limit_has_one_finding_and_misses_of_critical_ones_are_deviations() {
    Judgement judged =
        covered()
            .own("a", "cure", NOT_SHOWN)
            .own("b", "cure", NOT_MET)
            .own("c", "cure", "operating", NOT_MET)
            .judge();
    assertEquals(
        List.of("a", "b"), judged.deviations().stream().map(each -> each.limit().id()).toList());
    assertEquals(
        List.of("c"), judged.operatingMisses().stream().map(each -> each.limit().id()).toList());
    assertEquals(9, judged.findings().size(), "five of the class, three more and the steps");
  }

  /** As an inspector reads them: by step, and in it the critical ones first. */
  @Test
  void findings_are_told_by_step_and_rank() {
    Judgement judged =
        Bench.book()
            .own("c", "chill", "critical", NOT_MET)
            .own("b", "cure", "record", NOT_MET)
            .own("a", "cure", "critical", NOT_MET)
            .write("cure,09:00,into cure,F1", "cure,10:00,out of cure")
            .judge();
    List<String> ids =
        Checks.inOrder(judged.findings()).stream().map(each -> each.limit().id()).toList();
    assertEquals(List.of("a", "b", "c", "plan.steps"), ids.subList(0, 4));
  }

  /** A plan that says nothing about cooling can't be met. */
  @Test
  void what_the_class_asks_for_and_the_plan_lacks_is_not_shown() {
    Bench bench =
        Bench.book()
            .product("steps", "[\"cure\"]")
            .write("cure,09:00,into cure,F1", "cure,10:00,out of cure");
    for (String covers : List.of("nitrite ceiling", "nitrate", "cold holding", "come-up")) {
      bench.covers("own." + covers.replace(' ', '-'), covers, "cure", MET);
    }
    Judgement judged = bench.judge();
    Finding cooling = Bench.found(judged, "class.cooling");
    assertEquals(Verdict.NOT_SHOWN, cooling.verdict());
    assertEquals(Rank.CRITICAL, cooling.limit().rank());
    assertTrue(reasons(cooling).startsWith("the plan has no limit for cooling"), reasons(cooling));
    assertEquals(Verdict.NOT_SHOWN, judged.verdict());
  }

  private static final String BAG =
      "[{\"name\": \"cooked in a sealed, impermeable bag\", \"support\": \"support file 6\"}]";

  /** A fully cooked product that claims its lethality and has no limit for humidity. */
  private static Bench cooked() {
    return covered()
        .product("class", "\"fully cooked, not shelf stable\"")
        .covers("own.lethality", "lethality", "cure", MET);
  }

  @Test
  void a_named_exemption_stands_in_the_record_as_met_by_the_plans_word() {
    Judgement judged = cooked().product("exemptions", BAG).judge();
    Finding exempt = Bench.found(judged, "exempt.humidity");
    assertEquals(Verdict.MET, exempt.verdict());
    assertEquals(Rank.CRITICAL, exempt.limit().rank());
    assertEquals("humidity", exempt.limit().covers());
    assertEquals("pp. 31-33", exempt.limit().source().clause());
    assertEquals(
        "exempt by the plan: cooked in a sealed, impermeable bag; support: support file 6",
        reasons(exempt));
    assertEquals("met by no reading, but " + reasons(exempt), remarks(exempt));
    assertEquals(List.of(), exempt.evidence());
    assertEquals(Verdict.MET, judged.verdict());
  }

  @Test
  void without_the_exemption_humidity_is_not_shown() {
    Judgement judged = cooked().judge();
    assertEquals(Verdict.NOT_SHOWN, Bench.found(judged, "class.humidity").verdict());
    assertEquals(Verdict.NOT_SHOWN, judged.verdict());
  }

  /** A limit for the same control is judged all the same. */
  @Test
  void an_exemption_takes_no_limit_away() {
    Bench bench =
        cooked().product("exemptions", BAG).covers("own.moist", "humidity", "cure", NOT_MET);
    assertEquals(Verdict.NOT_MET, verdict(bench));
  }

  private static final String SLOW =
      "08:00:00..10:59:00/60 45>150; 11:00:00..12:40:00/60 130>80; 12:41:00..17:00:00/60 79>35";

  private static Bench cooled(String rule, String core) {
    return Bench.book()
        .rule(rule)
        .write(
            "smoke,08:00:00,into smoke,SM",
            "smoke,11:00:00,out of smoke",
            "chill,18:00:00,out of chill")
        .core("P1", "LG-0", core);
  }

  /** Option 1 missed, option 2 met: the better counts, both are printed, neither is a deviation. */
  @ParameterizedTest
  @CsvSource({"11:05:00, true", "12:31:00, false"})
  void of_a_group_the_best_counts_and_an_option_is_met_only_with_its_start(
      String into, boolean met) {
    String core =
        "08:00:00..10:59:00/60 45>150; 11:00:00..12:00:00/60 130>121; 12:01:00..12:59:00/60 120>80;"
            + " 13:00:00..17:00:00/60 79>35";
    Bench bench =
        cooled("{\"anyOf\": [\"us.b99.cooling-1\", \"us.b99.cooling-2\"]}", core)
            .rule("us.b99.cooling-2.start")
            .write("chill," + into + ",into chill,F2");
    Judgement judged = bench.judge();
    assertEquals(Verdict.NOT_MET, Bench.found(judged, "us.b99.cooling-1").verdict());
    assertEquals(Verdict.MET, Bench.found(judged, "us.b99.cooling-2").verdict());
    boolean deviates =
        judged.deviations().stream()
            .anyMatch(each -> each.limit().id().startsWith("us.b99.cooling"));
    assertEquals(!met, deviates);
  }

  @Test
  void an_option_whose_start_the_plan_leaves_out_is_not_shown() {
    String core =
        "08:00:00..10:59:00/60 45>119; 11:00:00 120; 11:01:00..11:50:00/60 119>80;"
            + " 11:51:00..15:00:00/60 79>35";
    Bench bench = cooled("us.b99.cooling-2", core).write("chill,11:05:00,into chill,F2");
    Finding finding = bench.finding("us.b99.cooling-2");
    assertEquals(Verdict.NOT_SHOWN, finding.verdict());
    assertTrue(reasons(finding).contains("us.b99.cooling-2.start"), reasons(finding));
    assertEquals(
        Verdict.MET, bench.rule("us.b99.cooling-2.start").finding("us.b99.cooling-2").verdict());
  }

  /** Option 1 is met, so that the late start of option 2 does not count. */
  @Test
  void the_start_of_an_option_that_is_not_needed_does_not_count() {
    String fast =
        "08:00:00..10:59:00/60 45>150; 11:00:00..12:20:00/60 130>80; 12:21:00..16:00:00/60 79>35";
    Judgement judged =
        cooled("{\"anyOf\": [\"us.b99.cooling-1\", \"us.b99.cooling-2\"]}", fast)
            .rule("us.b99.cooling-2.start")
            .write("chill,12:31:00,into chill,F2")
            .judge();
    assertEquals(Verdict.MET, Bench.found(judged, "us.b99.cooling-1").verdict());
    assertTrue(
        judged.deviations().stream()
            .noneMatch(each -> each.limit().id().startsWith("us.b99.cooling")));
  }

  @Test
  void of_a_group_that_no_member_meets_the_best_counts() {
    Judgement judged =
        cooled("{\"anyOf\": [\"us.b99.cooling-1\", \"us.a21.come-up-nrte\"]}", SLOW)
            .write("chill,11:05:00,into chill,F2")
            .judge();
    assertEquals(Verdict.NOT_MET, Bench.found(judged, "us.b99.cooling-1").verdict());
    assertTrue(Bench.found(judged, "us.a21.come-up-nrte").verdict() != Verdict.NOT_MET);
    assertTrue(
        judged.deviations().stream()
            .noneMatch(each -> each.limit().id().equals("us.b99.cooling-1")));
  }

  /** 100 ppm of nitrite and 250 ppm of accelerator, remembered conditions of a remembered limit. */
  @ParameterizedTest
  @CsvSource({
    "7.70, 1.21, met",
    "7.69, 1.21, not shown",
    "7.70, 1.20, not shown",
  })
  void a_limit_whose_condition_is_not_proved_is_not_shown(
      String cure, String accelerator, String verdict) {
    String limit = "us.osu.cooling-cured";
    Bench bench =
        cooled("{\"limit\": \"us.osu.cooling-cured\", \"support\": \"letter\"}", SLOW)
            .write(
                "cure,05:00,rind,,off",
                "cure,05:01,green weight,,4812,g",
                "cure,05:02,curing salt,C1," + cure + ",g",
                "cure,05:03,accelerator,E," + accelerator + ",g",
                "cure,05:04,into cure,F1",
                "chill,11:05:00,into chill,F2");
    assertEquals(verdict, bench.finding(limit).verdict().words());
  }

  @Test
  void a_condition_that_is_not_proved_never_excuses_a_miss() {
    String slow = SLOW.replace("12:40:00", "16:30:00").replace("12:41:00", "16:31:00");
    Bench bench =
        cooled("{\"limit\": \"us.osu.cooling-cured\", \"support\": \"letter\"}", slow)
            .write("chill,11:05:00,into chill,F2");
    assertEquals(Verdict.NOT_MET, bench.finding("us.osu.cooling-cured").verdict());
  }

  /** The remembered hour for product heated in part doubts the six hours. */
  @Test
  void a_limit_that_a_stricter_remembered_one_doubts_is_not_shown() {
    Bench bench = cooled("us.a21.come-up-nrte", SLOW).write("chill,11:05:00,into chill,F2");
    Finding finding = bench.finding("us.a21.come-up-nrte");
    assertEquals(Verdict.NOT_SHOWN, finding.verdict());
    assertTrue(reasons(finding).contains("us.b21.come-up-partly"), reasons(finding));
  }

  @ParameterizedTest
  @CsvSource({"chill, 30 min, NOT_SHOWN", "chill, 10 min, NOT_MET"})
  void an_open_fault_turns_met_into_not_shown_and_never_not_met(
      String step, String most, Verdict verdict) {
    String rest =
        "\"kind\": \"duration\", \"from\": \"into cure\", \"to\": \"out of cure\", \"atMost\": \"2"
            + " h\"";
    Bench bench = covered().own("a", "cure", most.equals("10 min") ? NOT_MET : rest);
    bench.write("cure,09:10,salt,,much,g");
    assertEquals(verdict, verdict(bench), step);
  }

  /** The core warmed by 4 °F while it chilled; nobody has said why. */
  @Test
  void a_finding_that_rests_on_a_doubtful_reading_is_not_shown() {
    String warmed =
        "08:00:00..10:59:00/60 45>150; 11:00:00..12:00:00/60 130>80; 12:01:00..13:00:00/60 79>60;"
            + " 13:01:00 64.1; 13:02:00..16:00:00/60 60>35";
    Judgement judged =
        cooled("us.b99.cooling-1", warmed).write("chill,11:05:00,into chill,F2").judge();
    Finding finding = Bench.found(judged, "us.b99.cooling-1");
    assertEquals(Verdict.NOT_SHOWN, finding.verdict());
    assertEquals(
        "it rests on a reading in doubt (re-warming at 2026-02-24/p1-log.csv:303:P1)",
        reasons(finding));
    assertEquals(1, judged.openFaults().size());
  }
}
