package org.flitchbook.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Files that end too soon, nest too deep or are none. */
final class BrokenFileTest {

  private static final long SEED = 3;

  @Test
  void a_plan_cut_off_in_the_middle_is_refused_with_its_last_line() {
    String plan = Draft.example().files().get(Draft.PLAN);
    String cut = plan.substring(0, plan.indexOf("{\"lot\": \"RC-118\""));
    assertOne(
        "plan\\.json:28: found .*end.*, expected JSON",
        Draft.example().whole(Draft.PLAN, cut).faults());
  }

  @Test
  void a_plan_cut_off_anywhere_is_refused_and_nothing_breaks() {
    SplittableRandom random = new SplittableRandom(SEED);
    String plan = Draft.example().files().get(Draft.PLAN).strip();
    for (int i = 0; i < 200; i++) {
      int length = random.nextInt(plan.length());
      Draft draft = Draft.example().whole(Draft.PLAN, plan.substring(0, length));
      assertEquals(1, draft.faults().size(), "seed " + SEED + ", cut at " + length);
    }
  }

  @Test
  void nesting_100_000_deep_is_refused() {
    String deep = "{\"plan\": " + "[".repeat(100_000) + "]".repeat(100_000) + "}";
    assertOne(
        "plan\\.json(:1)?: found nesting .*1,000 deep.*, expected JSON",
        Draft.example().whole(Draft.PLAN, deep).faults());
    assertEquals(1, Draft.example().whole(Draft.PLAN, "{\"a\":".repeat(100_000)).faults().size());
  }

  @Test
  void text_behind_the_end_is_refused() {
    String plan = Draft.example().files().get(Draft.PLAN).strip();
    assertEquals(
        List.of("plan.json:76: found text behind the end of the document, expected JSON"),
        Draft.example().whole(Draft.PLAN, plan + " {}").faults());
  }

  @Test
  void a_plan_that_is_no_object_is_refused() {
    assertEquals(
        List.of("plan.json:1: found a list, expected an object"),
        Draft.example().whole(Draft.PLAN, "[]").faults());
    assertFalse(Draft.example().whole(Draft.PLAN, "").faults().isEmpty());
  }

  @Test
  void a_broken_template_is_told_with_its_own_place() {
    List<String> faults = Draft.example().whole(Draft.US, "{\n\"flitchbook\": 1,\n").faults();
    assertOne("templates/limits/us\\.json:3: found .*end.*, expected JSON", faults.subList(0, 1));
  }

  @Test
  void a_book_without_the_classes_is_refused() {
    assertEquals(
        List.of(
            "templates/classes.json: found no such file, expected what a plan must cover, by class"
                + " of product"),
        Draft.example().without(Draft.CLASSES).faults());
  }

  @Test
  void all_faults_of_a_plan_are_found_in_one_reading() {
    List<String> faults =
        Draft.example()
            .with("America/New_York", "Nowhere")
            .with("\"every\": \"36 h\"", "\"every\": \"36 kg\"")
            .with("\"id\": \"S-01\"", "\"id\": \"S-10\"")
            .faults();
    assertEquals(3, faults.size(), faults.toString());
    assertTrue(faults.get(0).startsWith("plan.json:5:establishment.zone:"), faults.toString());
  }

  /** The parser's own words may change; the place and what is wrong may not. */
  private static void assertOne(String pattern, List<String> faults) {
    assertEquals(1, faults.size(), faults.toString());
    assertTrue(faults.get(0).matches(pattern), faults.get(0));
  }
}
