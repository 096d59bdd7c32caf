package org.flitchbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code plan check} on the example's plan, whole, with a hazard left out, and broken. */
final class PlanCheckTest {

  private static final String COOLING =
      "        {\"limit\": \"us.b99.cooling-1\", \"ccp\": \"2\", \"monitored\": \"logger, each"
          + " lot\", \"by\": \"MA\", \"ifMissed\": \"hold the run; the process authority"
          + " decides\"},";

  private static final String OTHER_COVER = "\"id\": \"own.come-up\", \"covers\": \"slow heat\"";

  private static final String READY_MIX =
      "RC-118, Ready Cure: 0.6 % nitrite, not the usual 5 % to 8 %; a lot cured with it is asked"
          + " about, until its \"support\" names the bag's label\n";

  @TempDir private Path folder;
  private Path book;
  private Path plan;

  @BeforeEach
  void copy() {
    book = Tree.example(folder);
    plan = book.resolve("plan.json");
  }

  @Test
  void a_plan_that_covers_every_hazard_is_all_well() {
    Ran ran = Ran.of("plan", "check", book).expect(0);
    assertEquals(
        """
        Plan version 3 can be used.
        JTB, Juniper & treacle belly bacon: 11 limits
        CPL, Caraway cooked loin: 7 limits
        """
            + READY_MIX,
        ran.out());
    assertEquals("", ran.err());
  }

  @Test
  void a_cure_of_unusual_strength_is_told_until_its_label_is_named() {
    Tree.edit(
        plan,
        "\"sodiumNitrite\": \"0.6 %\"",
        "\"sodiumNitrite\": \"0.6 %\", \"support\": \"label\"");
    assertFalse(Ran.of("plan", "check", book).expect(0).out().contains("RC-118"));
  }

  @Test
  void a_hazard_without_a_limit_is_named_with_the_reason_to_cover_it() {
    Tree.edit(plan, COOLING + "\n", "");
    Ran ran = Ran.of("plan", "check", book).expect(1);
    assertEquals(
        """
        Plan version 3 leaves something open.
        JTB, Juniper & treacle belly bacon: 10 limits
            no limit covers cooling. Its heat does not make it safe, so too much nitrite, growth\
         while it is cold, while it warms and while it cools are what can hurt; the class is the\
         regulation's, the list of controls is this project's reading of it. (9 CFR 417.2 (b)(1))
        CPL, Caraway cooked loin: 7 limits
        """
            + READY_MIX,
        ran.out());
    assertEquals("", ran.err());
  }

  @Test
  void the_record_of_such_a_plan_says_that_the_hazard_is_not_shown() {
    Tree.edit(plan, COOLING + "\n", "");
    Ran ran = Ran.of("check", book).expect(1);
    assertTrue(
        ran.flat()
            .contains(
                "– not shown: cooling: the plan has no limit for cooling, which its product's class"
                    + " asks for (9 CFR 417.2 (b)(1))"),
        ran.out());
  }

  private static final String PEAK =
      """
              {"id": "own.peak", "covers": "cooling", "step": "chill", "rank": "critical",
               "kind": "ceiling", "quantity": "peak internal temperature", "atMost": "165 °F",
               "because": "a test", "support": "a test"},
      """;

  /** With a ceiling on the peak for cooling, and only that. */
  private void coolByPeak() {
    Tree.edit(plan, COOLING + "\n", "");
    Tree.edit(plan, "\"ownLimits\": [\n", "\"ownLimits\": [\n" + PEAK);
  }

  @Test
  void a_limit_that_can_not_cover_its_hazard_leaves_it_open() {
    coolByPeak();
    Ran ran = Ran.of("plan", "check", book).expect(1);
    assertEquals(
        """
            own.peak says that it covers cooling, and can't. Cooling is covered by a span of the\
         internal temperature in the step chill, without a hole from 120 °F or above to 55 °F or\
         below.
        """,
        ran.out().lines().filter(each -> each.contains("own.peak")).findFirst().orElse("") + "\n");
    assertTrue(ran.out().contains("    no limit covers cooling. "), ran.out());
  }

  @Test
  void a_lot_under_such_a_plan_is_not_shown() {
    coolByPeak();
    Ran ran = Ran.of("check", book).expect(1);
    assertTrue(
        ran.flat().contains("– not shown: cooling: the plan has no limit for cooling"), ran.out());
  }

  @Test
  void a_limit_that_is_never_met_before_something_is_confirmed_is_left_open() {
    Tree.edit(plan, "{\"limit\": \"us.319.107.yield\"", "{\"limit\": \"us.a21.come-up-nrte\"");
    Ran.of("plan", "check", book).expect(0);
    Tree.edit(plan, "\"id\": \"own.come-up\", \"covers\": \"come-up\"", OTHER_COVER);
    Ran ran = Ran.of("plan", "check", book).expect(1);
    assertTrue(ran.out().startsWith("Plan version 3 leaves something open."), ran.out());
    assertTrue(
        ran.out()
            .contains(
                "    us.a21.come-up-nrte can't be met until the plan confirms it or the stricter"
                    + " us.b21.come-up-partly, with what supports that, under \"confirms\"\n"),
        ran.out());
  }

  @Test
  void every_fault_of_a_plan_is_listed_with_its_line_and_key() {
    Tree.edit(plan, "\"paper\"", "\"papier\"");
    Tree.edit(plan, "[\"us\"]", "[\"uk\"]");
    Ran ran = Ran.of("plan", "check", book).expect(3);
    assertEquals(
        """
        plan.json:5:establishment.papier: found the key "papier", expected one of name, number,\
         address, regime, zone, altitude, paper, temperature, decimalMark, soleOperator, review, signatures,\
         timestampUrl, language
        plan.json:8:ruleSets: found "uk", expected one of au-nz, ca, codex, eu, gb, us, us-retail
        Nothing was judged and nothing was written.
        """,
        ran.err());
    assertEquals("", ran.out());
  }

  @Test
  void a_plan_is_found_from_the_folder_of_a_day_as_well() {
    assertEquals(
        Ran.of("plan", "check", book).expect(0).out(),
        Ran.of("plan", "check", book.resolve(Tree.DAY)).expect(0).out());
  }
}
