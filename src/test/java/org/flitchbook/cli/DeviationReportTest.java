package org.flitchbook.cli;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The report of a day's deviations: facts, excerpt, hold, the four parts, the balance. */
final class DeviationReportTest {

  private static final String HELD =
      "26044-B1,2026-02-24 21:25,held,tag T-031,4266,g,MA,,\"whole lot, fan fridge, top shelf\"";

  private static final String WASTE = "26047-B1,2026-02-24 19:06,waste,,12,g,MA,S-10,";

  @TempDir private static Path folder;
  private static String asItIs;

  /** Of the demo day with two dispositions and a dispatch of one lot. */
  private static String edited;

  @BeforeAll
  static void read() {
    asItIs = text(DemoDay.records());
    Path book = Tree.demo(folder);
    Path day = book.resolve(Tree.DAY);
    Tree.edit(
        day.resolve("actions.csv"),
        HELD,
        String.join(
            "\n",
            HELD,
            "26044-B1,2026-02-24 22:10,disposition,destroyed,4000,g,MA,,",
            "26044-B1,2026-02-24 22:12,disposition,sample sent away,200,g,MA,,"));
    Tree.edit(
        day.resolve("dispatch.csv"),
        WASTE,
        WASTE + "\n26044-B1,2026-02-24 19:30,dispatched,The Crooked Eel,300,g,MA,,two packs");
    edited = text(DemoDay.close(book, folder.resolve("out")));
  }

  private static String text(Path records) {
    return Pdfs.text(records.resolve("deviations.pdf")).replaceAll("\\s+", " ");
  }

  private static String of(String lot, String report) {
    String from = report.substring(report.indexOf("Lot " + lot + ", "));
    int next = from.indexOf("Lot 26", 8);
    return next < 0 ? from : from.substring(0, next);
  }

  @ParameterizedTest
  @CsvSource({
    "26043-L1, 'From – to 2026-02-23 15:47 to 2026-02-23 19:19;'",
    "26043-L1, 'Found by, when MA, 2026-02-23 17:40'",
    "26043-L1, 'Beyond the limit by 3 h 2 min'",
    "26043-L1, '130 °F to 80 °F, P1: half an hour before'",
    "26043-L1, '2541 g, tag T-030, whole lot, still fridge, bottom shelf (MA, 2026-02-23 17:40)'",
    "26043-L1, '1. Cause found and removed: NOT RECORDED'",
    "26043-L1, 'Still to be disposed of 2541 g'",
    "26043-L1, 'nothing of this lot is on file as dispatched'",
    "26043-L1, '57 entries by hand; 3 logs with 1596 readings; no gap'",
    "26044-B1, 'Beyond the limit by 21.193 ppm'",
    "26044-B1, 'From – to 2026-02-13 09:10 to 2026-02-13 09:31'",
    "26044-B1, '1. Cause found and removed the piece was weighed with its rind on'",
    "26044-B1, '3. Recurrence prevented: NOT RECORDED'",
    "26045-B1, 'Held: what, how much, where, tag: NOT RECORDED'"
  })
  void it_tells_what_happened_and_leaves_room_for_what_is_not_on_file(String lot, String told) {
    String part = of(lot, asItIs);
    assertTrue(part.contains(told), told + " is not in " + part);
  }

  @Test
  void a_disposition_is_balanced_in_grams() {
    String part = of("26044-B1", edited);
    assertTrue(
        part.contains(
            "Held 4266 g destroyed − 4000 g sample sent away − 200 g Still to be disposed of 66 g"),
        part);
  }

  @Test
  void what_has_left_already_is_told() {
    String part = of("26044-B1", edited);
    assertTrue(
        part.contains("Left already 300 g, The Crooked Eel, two packs (MA, 2026-02-24 19:30)"),
        part);
  }

  @Test
  void a_deviation_that_the_plan_has_no_action_for_asks_for_the_other_four_parts() {
    Path book = Tree.example(folder.resolve("no action"));
    Tree.edit(book.resolve("2026-02-16/cure.csv"), "11.5", "16.2");
    Path plan = book.resolve("plan.json");
    Tree.write(plan, Tree.text(plan).replaceAll(", \"ifMissed\": \"[^\"]*\"", ""));
    String part = of("26047-B1", text(DemoDay.close(book, folder.resolve("without"))));
    for (String told :
        List.of(
            "that the plan did not foresee (9 CFR 417.3(b))",
            "1. Segregated and held",
            "2. Acceptability reviewed: NOT RECORDED",
            "3. Disposition, to the last gram: NOT RECORDED",
            "4. Plan reassessed by a trained person: NOT RECORDED")) {
      assertTrue(part.contains(told), told + " is not in " + part);
    }
    assertFalse(part.contains("417.3(a)"), part);
  }
}
