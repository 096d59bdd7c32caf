package org.flitchbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A plan that changed while a lot was made: its cure of 149.4 ppm began on 16 February. */
final class PlanChangedTest {

  private static final String FLOOR = "\"atLeast\": \"120 ppm\"";

  @TempDir private Path folder;
  private Path book;
  private Path former;

  /** Version 3 is put by, version 4 is signed on 20 February. */
  @BeforeEach
  void change() throws IOException {
    book = Tree.example(folder);
    former = Files.createDirectories(book.resolve("plans")).resolve("plan-3.json");
    Files.copy(book.resolve("plan.json"), former);
    signed(book.resolve("plan.json"), "4", "2026-02-20");
  }

  private static void signed(Path plan, String version, String day) {
    Tree.edit(
        plan,
        "\"version\": \"3\", \"signed\": \"2026-01-05\"",
        "\"version\": \"%s\", \"signed\": \"%s\"".formatted(version, day));
  }

  private static void floor(Path plan, int ppm) {
    Tree.edit(plan, FLOOR, "\"atLeast\": \"" + ppm + " ppm\"");
  }

  private JsonNode floor(int status) {
    JsonNode lot =
        Ran.of("check", book.resolve(Tree.DAY), "--json").expect(status).json().at("/lots/0");
    for (JsonNode finding : lot.path("findings")) {
      if (finding.path("limit").asText().equals("own.nitrite-floor")) {
        return finding;
      }
    }
    throw new AssertionError(lot.toPrettyString());
  }

  @ParameterizedTest
  @CsvSource({
    "150, 120, 1, not met, 'by plan version 3, in force until 2026-02-20; version 4 gives met'",
    "120, 150, 1, not met, 'by plan version 4, the stricter here; version 3 gives met'",
    "120, 130, 0, met,     'by plan version 4, the stricter here; version 3 gives met'",
    "120, 120, 0, met,     ''",
  })
  void the_stricter_of_two_versions_counts(
      int before, int now, int status, String verdict, String remark) {
    floor(former, before);
    floor(book.resolve("plan.json"), now);
    JsonNode finding = floor(status);
    assertEquals(verdict, finding.path("verdict").asText());
    String said = finding.path("remark").asText();
    assertTrue(remark.isEmpty() ? said.isEmpty() : said.endsWith(remark), said);
  }

  @Test
  void a_version_replaced_before_the_lot_began_says_nothing_of_it() throws IOException {
    floor(former, 150);
    Files.delete(book.resolve("plan.json"));
    Files.copy(
        Tree.example(folder.resolve("other")).resolve("plan.json"), book.resolve("plan.json"));
    signed(book.resolve("plan.json"), "4", "2026-02-16");
    assertEquals("met", floor(0).path("verdict").asText());
  }

  @Test
  void a_limit_that_only_the_former_version_has_is_judged_too() {
    Tree.edit(book.resolve("plan.json"), "own.nitrite-floor", "own.floor-of-now");
    JsonNode finding = floor(0);
    assertEquals("met", finding.path("verdict").asText());
    assertEquals(
        "by plan version 3, in force until 2026-02-20; the plan of today has no such limit",
        finding.path("remark").asText());
  }

  @ParameterizedTest
  @CsvSource({"4, 0, met", "3, 1, not met", "5, 1, not met"})
  void a_person_says_which_version_counts(String version, int status, String verdict)
      throws IOException {
    floor(former, 150);
    Files.writeString(
        book.resolve(Tree.DAY).resolve("actions.csv"),
        "lot,time,what,item,value,unit,by,instrument,note\n"
            + "26047-B1,2026-02-24 19:00,explained,plan changed,"
            + version
            + ",,IQ,,the floor of 150 was a slip\n");
    assertEquals(verdict, floor(status).path("verdict").asText());
  }

  @Test
  void the_record_says_which_version_each_step_began_under() {
    Path out = folder.resolve("out");
    Ran.of("close", book.resolve(Tree.DAY), "--out", out).expect(0);
    String text = Pdfs.text(out.resolve(Tree.DAY).resolve("r1").resolve("26047-B1.pdf"));
    String flat = text.replaceAll("\\s+", " ");
    assertTrue(flat.contains("The step cure began under plan version 3, signed 2026-01-05."), text);
    assertTrue(
        flat.contains("The step smoke began under plan version 4, signed 2026-02-20."), text);
    assertTrue(flat.contains("the stricter finding counts"), text);
  }

  @Test
  void two_plans_of_one_version_can_not_be_told_apart() throws IOException {
    Files.copy(former, book.resolve("plans").resolve("plan-3-again.json"));
    Ran ran = Ran.of("check", book.resolve(Tree.DAY)).expect(3);
    assertTrue(
        ran.err().contains("found version 3 twice, expected a version of its own"), ran.err());
  }

  @Test
  void a_former_plan_was_signed_before_the_plan_of_today() {
    signed(former, "2", "2026-02-20");
    Ran ran = Ran.of("check", book.resolve(Tree.DAY)).expect(3);
    assertTrue(ran.err().contains("plans/plan-3.json"), ran.err());
    assertFalse(ran.err().contains("Exception"), ran.err());
  }

  /** The example's lot began on 16 February; a plan that fits it may have been written after it. */
  @ParameterizedTest
  @CsvSource({"2026-02-15, 0", "2026-02-16, 0", "2026-02-17, 1"})
  void a_plan_signed_after_the_lot_began_is_asked_about(String signed, int status) {
    Path book = Tree.example(folder.resolve("newer"));
    Tree.edit(
        book.resolve("plan.json"), "\"signed\": \"2026-01-05\"", "\"signed\": \"" + signed + "\"");
    String out = Ran.of("check", book.resolve(Tree.DAY)).expect(status).out();
    assertEquals(status == 1, out.contains("plan newer than the lot"), out);
  }
}
