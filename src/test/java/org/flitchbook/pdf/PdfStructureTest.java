package org.flitchbook.pdf;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureNode;
import org.flitchbook.document.Block;
import org.flitchbook.document.Heading;
import org.flitchbook.document.Paper;
import org.junit.jupiter.api.Test;

class PdfStructureTest {
  private static List<PDStructureElement> elements(PDDocument file) {
    List<PDStructureElement> all = new ArrayList<>();
    collect(file.getDocumentCatalog().getStructureTreeRoot(), all);
    return all;
  }

  private static void collect(PDStructureNode node, List<PDStructureElement> into) {
    for (Object kid : node.getKids()) {
      if (kid instanceof PDStructureElement element) {
        into.add(element);
        collect(element, into);
      }
    }
  }

  private static List<String> types(Block... blocks) throws IOException {
    try (PDDocument file = Loader.loadPDF(Pdf.print(Pages.document(blocks)))) {
      return elements(file).stream().map(PDStructureElement::getStructureType).toList();
    }
  }

  @Test
  void a_table_over_many_pages_is_one_table_with_one_head() throws IOException {
    List<String> types = types(Pages.table(300));
    assertEquals(1, types.stream().filter("Table"::equals).count());
    assertEquals(1, types.stream().filter("THead"::equals).count());
    assertEquals(301, types.stream().filter("TR"::equals).count());
    assertEquals(3 + 300, types.stream().filter("TH"::equals).count());
    assertEquals(600, types.stream().filter("TD"::equals).count());
  }

  @Test
  void no_level_of_heading_is_skipped() throws IOException {
    List<String> types =
        types(new Heading(3, "deep"), new Heading(1, "part"), new Heading(3, "deep again"));
    assertEquals(List.of("Document", "H1", "H2", "H2", "H3"), types);
  }

  @Test
  void a_chart_is_a_figure_in_words() throws IOException {
    try (PDDocument file = Loader.loadPDF(Pdf.print(SampleRecord.on(Paper.A4)))) {
      List<String> words =
          elements(file).stream()
              .filter(element -> "Figure".equals(element.getStructureType()))
              .map(PDStructureElement::getAlternateDescription)
              .toList();
      assertEquals(1, words.size());
      assertTrue(words.get(0).startsWith("Internal temperature of probes P1 and P2"), words.get(0));
    }
  }
}
