package org.flitchbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureNode;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Hand entries in print: when they were typed, what replaced them, what is missing. */
final class EntryTablesTest {

  private static final String LOT = "26047-B1";

  @TempDir private Path folder;

  /** The example book with its soak sheet rewritten with one more column or two. */
  private Path close(String head, String... rows) {
    Path book = Tree.example(folder);
    Path soak = book.resolve("2026-02-23").resolve("soak.csv");
    Tree.write(soak, () -> Files.writeString(soak, head + "\n" + String.join("\n", rows) + "\n"));
    Ran.of("close", book.resolve(Tree.DAY), "--out", folder.resolve("out")).expect(0);
    return folder.resolve("out").resolve(Tree.DAY).resolve("r1").resolve(LOT + ".pdf");
  }

  private static String flat(Path pdf) {
    return Pdfs.text(pdf).replaceAll("\\s+", " ");
  }

  @Test
  void the_time_of_typing_stands_beside_that_of_the_event_and_late_ones_are_marked() {
    String text =
        flat(
            close(
                "lot,time,what,item,value,unit,by,instrument,note,entered",
                LOT + ",2026-02-23 15:10,into soak,SK,,,MA,,,2026-02-23 15:10",
                LOT + ",2026-02-23 15:11,water temperature,,39.5,°F,MA,HT-3,,2026-02-23 15:24",
                LOT + ",2026-02-23 16:08,water temperature,,40.2,°F,MA,HT-3,,2026-02-23 17:30",
                LOT + ",2026-02-23 16:10,out of soak,,,,MA,,,",
                LOT + ",2026-02-23 16:14,weight,,4686,g,MA,S-10,,2026-02-23 16:14"));
    assertTrue(text.contains("Time Typed What Item Value By With"), text);
    assertTrue(text.contains("2026-02-23 15:11 15:24, 12 min later water temperature"), text);
    assertTrue(text.contains("2026-02-23 16:08 17:30, late by 1 h 21 min water temperature"), text);
    assertTrue(text.contains("2026-02-23 16:10 NOT RECORDED out of soak"), text);
  }

  @Test
  void how_late_is_late_is_the_number_of_the_rule() throws IOException {
    Path own = Files.createDirectories(folder.resolve("book").resolve("templates"));
    Files.copy(Path.of("templates", "doubts.json"), own.resolve("doubts.json"));
    Tree.edit(own.resolve("doubts.json"), "\"after\": \"15 min\"", "\"after\": \"10 min\"");
    String text =
        flat(
            close(
                "lot,time,what,item,value,unit,by,instrument,note,entered",
                LOT + ",2026-02-23 15:10,into soak,SK,,,MA,,,2026-02-23 15:10",
                LOT + ",2026-02-23 15:11,water temperature,,39.5,°F,MA,HT-3,,2026-02-23 15:24",
                LOT + ",2026-02-23 16:08,water temperature,,40.2,°F,MA,HT-3,,2026-02-23 16:12",
                LOT + ",2026-02-23 16:10,out of soak,,,,MA,,,2026-02-23 16:10",
                LOT + ",2026-02-23 16:14,weight,,4686,g,MA,S-10,,2026-02-23 16:14"));
    assertTrue(text.contains("2026-02-23 15:11 15:24, late by 12 min water temperature"), text);
    assertTrue(text.contains("2026-02-23 16:08 16:12, 3 min later water temperature"), text);
  }

  @Test
  void what_was_replaced_stays_with_its_value_struck_and_says_by_what() throws IOException {
    Path pdf =
        close(
            "lot,time,what,item,value,unit,by,instrument,note,corrects",
            LOT + ",2026-02-23 15:10,into soak,SK,,,MA,,,",
            LOT + ",2026-02-23 15:11,water temperature,,93.5,°F,MA,HT-3,,",
            LOT
                + ",2026-02-23 15:11,water temperature,,39.5,°F,MA,HT-3,digits"
                + " swapped,2026-02-23/soak.csv:3",
            LOT + ",2026-02-23 16:08,water temperature,,40.2,°F,MA,HT-3,,",
            LOT + ",2026-02-23 16:10,out of soak,,,,MA,,,",
            LOT + ",2026-02-23 16:14,weight,,4686,g,MA,S-10,,");
    String text = flat(pdf);
    assertTrue(text.contains("93.5 °F"), text);
    assertTrue(text.contains("replaced by 2026-02-23/"), text);
    assertTrue(text.contains("digits swapped; corrects 2026-02-23/"), text);
    assertTrue(text.contains("1 correction"), text);
    assertEquals(List.of("struck: 93.5 °F"), struck(pdf));
  }

  private static List<String> struck(Path pdf) throws IOException {
    try (PDDocument file = Loader.loadPDF(pdf.toFile())) {
      List<String> struck = new ArrayList<>();
      collect(file.getDocumentCatalog().getStructureTreeRoot(), struck);
      return struck;
    }
  }

  private static void collect(PDStructureNode node, List<String> into) {
    for (Object kid : node.getKids()) {
      if (kid instanceof PDStructureElement element) {
        if (element.getActualText() != null) {
          into.add(element.getActualText().replace('\u00a0', ' '));
        }
        collect(element, into);
      }
    }
  }

  @Test
  void a_sheet_without_times_of_typing_has_no_column_for_them() {
    String text =
        flat(
            close(
                "lot,time,what,item,value,unit,by,instrument,note",
                LOT + ",2026-02-23 15:10,into soak,SK,,,MA,,",
                LOT + ",2026-02-23 15:11,water temperature,,39.5,°F,MA,HT-3,",
                LOT + ",2026-02-23 16:08,water temperature,,40.2,°F,MA,HT-3,",
                LOT + ",2026-02-23 16:10,out of soak,,,,MA,,",
                LOT + ",2026-02-23 16:14,weight,,4686,g,MA,S-10,"));
    assertFalse(text.contains("Time Typed What"), text);
  }

  @Test
  void the_log_stands_at_its_extremes_where_stages_begin_and_end_and_every_half_hour() {
    String text =
        flat(
            close(
                "lot,time,what,item,value,unit,by,instrument,note",
                LOT + ",2026-02-23 15:10,into soak,SK,,,MA,,",
                LOT + ",2026-02-23 15:11,water temperature,,39.5,°F,MA,HT-3,",
                LOT + ",2026-02-23 16:08,water temperature,,40.2,°F,MA,HT-3,",
                LOT + ",2026-02-23 16:10,out of soak,,,,MA,,",
                LOT + ",2026-02-23 16:14,weight,,4686,g,MA,S-10,"));
    for (String words :
        List.of(
            "130 °F to 80 °F begins",
            "80 °F to 40 °F ends",
            "50 °F to 130 °F begins",
            "highest",
            "lowest",
            "2026-02-24 09:00 P1",
            "2026-02-24 09:30 P1")) {
      assertTrue(text.contains(words), words + " is not in " + text);
    }
  }

  @Test
  void readings_left_out_stay_in_print_with_their_reason() {
    Path book = Tree.example(folder);
    Path log = book.resolve(Tree.DAY).resolve("probes-a.csv");
    Tree.edit(log, "2026-02-24 13:02:00,81.5,", "2026-02-24 13:02:00,999.9,");
    Tree.edit(log, "2026-02-24 13:03:00,81.2,", "2026-02-24 13:03:00,999.9,");
    Ran.of("close", book.resolve(Tree.DAY), "--out", folder.resolve("out")).expect(0);
    String text = flat(folder.resolve("out").resolve(Tree.DAY).resolve("r1").resolve(LOT + ".pdf"));
    assertTrue(text.contains("Readings left out of the curves"), text);
    assertTrue(text.contains("P1 2026-02-24 13:02 2026-02-24 13:03 2 999.9 °F"), text);
    assertTrue(text.contains("crossing of a limit left out"), "the key of the chart: " + text);
  }
}
