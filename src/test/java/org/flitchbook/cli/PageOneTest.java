package org.flitchbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureNode;
import org.flitchbook.OutsideProgram;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.FieldSource;

/** What the first page of a record says in one look. */
final class PageOneTest {

  static final List<String> LOTS =
      DemoDay.PRINTS.stream().filter(name -> name.startsWith("26")).toList();

  private static Path records;

  @BeforeAll
  static void close() {
    records = DemoDay.records();
  }

  private static String pageOne(Path records, String lot) {
    String text = Pdfs.text(records.resolve(lot + ".pdf"));
    return text.substring(0, text.indexOf('\f')).replaceAll("\\s+", " ");
  }

  @ParameterizedTest
  @FieldSource("LOTS")
  void it_has_verdict_limits_evidence_deviations_retention_and_boxes(String lot) {
    String page = pageOne(records, lot);
    for (String words :
        List.of(
            "Limits in force, each beside its worst value",
            "inside │ over",
            "Sources: [1] 9 CFR 424.22 (b)(3); [2] 9 CFR 424.21 (c)",
            "entries by hand",
            "Keep until 2028-02-24, 2 years from the day judged",
            "Kept by 9 CFR 417.5 (e)(1): one year for refrigerated product",
            "Open deviations",
            "Prepared by",
            DemoDay.MET.contains(lot) ? "Pre-shipment review" : "Reviewed, not released",
            "page 1 of")) {
      assertTrue(page.contains(words), words + " is not on page one of " + lot + ": " + page);
    }
  }

  @Test
  void what_is_to_come_is_named() {
    assertTrue(pageOne(records, "26055-B1").contains("Pending cooling option 1; yield"));
    assertFalse(pageOne(records, "26047-B1").contains("Pending"));
  }

  /** Beside each number that was measured stands a scale that says the same in words. */
  @ParameterizedTest
  @FieldSource("LOTS")
  void every_margin_is_on_a_scale_inside_where_it_is_met_and_over_where_not(String lot)
      throws IOException {
    List<String> expected = new ArrayList<>();
    JsonNode findings =
        Ran.json(Tree.text(records.resolve(lot + ".json"))).get("lots").get(0).get("findings");
    for (JsonNode finding : findings) {
      if (finding.has("margin") && !finding.get("verdict").textValue().equals("pending")) {
        double margin = finding.get("margin").doubleValue();
        expected.add(margin > 0 ? "inside the limit" : margin < 0 ? "over the limit" : "at the");
      }
    }
    List<String> scales = scales(records.resolve(lot + ".pdf"));
    expected.sort(String::compareTo);
    List<String> found =
        new ArrayList<>(
            scales.stream()
                .map(words -> words.replaceAll("^.*(inside the limit|over the limit)$", "$1"))
                .map(words -> words.equals("at the limit") ? "at the" : words)
                .toList());
    found.sort(String::compareTo);
    assertEquals(expected, found);
  }

  private static List<String> scales(Path pdf) throws IOException {
    try (PDDocument file = Loader.loadPDF(pdf.toFile())) {
      List<String> scales = new ArrayList<>();
      collect(file.getDocumentCatalog().getStructureTreeRoot(), "", scales);
      return scales;
    }
  }

  private static void collect(PDStructureNode node, String parent, List<String> into) {
    for (Object kid : node.getKids()) {
      if (kid instanceof PDStructureElement element) {
        if (element.getStructureType().equals("Figure") && parent.equals("TD")) {
          into.add(element.getAlternateDescription().replace('\u00a0', ' '));
        }
        collect(element, element.getStructureType(), into);
      }
    }
  }

  @ParameterizedTest
  @CsvSource({
    "1 year,  2027-02-24, 1 year from the day judged",
    "18 month, 2027-08-24, 18 months from the day judged"
  })
  void the_plan_states_how_long_records_are_kept(
      String stated, String until, String told, @TempDir Path own) {
    Path book = Tree.example(own);
    String signed = "\"reassessBy\": \"2027-01-05\"";
    Tree.edit(book.resolve("plan.json"), signed, signed + ", \"retention\": \"" + stated + "\"");
    String page = closed(book);
    assertTrue(page.contains("Keep until " + until + ", " + told), page);
    assertTrue(page.contains("Kept by plan version 3; one year for refrigerated"), page);
  }

  private static String closed(Path book) {
    Ran.of("close", book.resolve(Tree.DAY)).expect(0);
    return pageOne(book.resolve(Smokeyard.RECORD).getParent(), "26047-B1");
  }

  @Test
  void a_record_is_kept_from_the_last_shipment(@TempDir Path own) {
    Path book = Tree.example(own);
    Tree.write(
        book.resolve(Tree.DAY).resolve("dispatch.csv"),
        """
        lot,time,what,item,value,unit,by,instrument,note
        26047-B1,2026-02-25 08:00,reviewed,,,,IQ,,
        26047-B1,2026-02-25 09:00,dispatched,The Crooked Eel,3900,g,MA,,26 packs
        """);
    String page = closed(book);
    assertTrue(page.contains("Keep until 2028-02-25, 2 years from the last shipment"), page);
  }

  @Test
  void who_works_alone_is_said_to(@TempDir Path own) {
    Path book = alone(own.resolve("reviewed"));
    Tree.write(
        book.resolve(Tree.DAY).resolve("dispatch.csv"),
        """
        lot,time,what,item,value,unit,by,instrument,note
        26047-B1,2026-02-24 22:06,reviewed,,,,MA,,
        """);
    String page = closed(book);
    assertTrue(page.contains("Pre-shipment review, sole operator"), page);
    String read = read(book);
    assertTrue(read.contains("the review came 4 hours after the last entry before it"), read);
    Path unreviewed = alone(own);
    closed(unreviewed);
    String other = read(unreviewed);
    assertTrue(other.contains("I work alone, and have let time pass before this review"), other);
  }

  /** In the order in which it is read: a sentence that ends on another line stays whole. */
  private static String read(Path book) {
    Path pdf = book.resolve(Smokeyard.RECORD);
    return OutsideProgram.ask("pdftotext", "-enc", "UTF-8", "-l", "1", pdf, "-")
        .replaceAll("\\s+", " ");
  }

  private static Path alone(Path own) {
    Path book = Tree.example(own);
    Tree.edit(
        book.resolve("plan.json"),
        "\"temperature\": \"°F\"",
        "\"temperature\": \"°F\", \"soleOperator\": true");
    return book;
  }
}
