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
import org.flitchbook.document.Document;
import org.flitchbook.document.Table;
import org.flitchbook.document.Text;
import org.flitchbook.document.Tone;
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
    try (PDDocument file = Loader.loadPDF(Pages.print(Pages.document(blocks)))) {
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
        types(
            new Block.Heading(3, "deep"),
            new Block.Heading(1, "part"),
            new Block.Heading(3, "deep again"));
    assertEquals(List.of("Document", "H1", "H2", "H2", "H3"), types);
  }

  /** The elements of one type, each with what is read out in its place, and its parent's type. */
  private static List<String> said(String type) throws IOException {
    try (PDDocument file = Loader.loadPDF(Pages.print(SampleRecord.on(Document.Paper.A4)))) {
      return elements(file).stream()
          .filter(element -> type.equals(element.getStructureType()))
          .map(PdfStructureTest::said)
          .toList();
    }
  }

  private static String said(PDStructureElement element) {
    String parent = ((PDStructureElement) element.getParent()).getStructureType();
    String words =
        element.getActualText() == null
            ? element.getAlternateDescription()
            : element.getActualText();
    return parent + ": " + words;
  }

  @Test
  void a_chart_is_a_figure_in_words() throws IOException {
    List<String> figures =
        said("Figure").stream().filter(each -> each.startsWith("Document: ")).toList();
    assertEquals(2, figures.size());
    assertTrue(figures.get(1).contains("Internal temperature of probes P1 and P2"), figures.get(1));
  }

  @Test
  void a_code_is_a_figure_in_words() throws IOException {
    assertEquals(
        "Document: Code that holds line 12 of the ledger with its hash", said("Figure").get(0));
  }

  @Test
  void a_scale_is_a_figure_in_words_within_its_cell() throws IOException {
    List<String> scales = said("Figure").stream().filter(each -> each.startsWith("TD: ")).toList();
    assertEquals(6, scales.size());
    assertEquals("TD: a quarter inside the limit", scales.get(0));
    assertEquals("TD: far over the limit", scales.get(5));
  }

  @Test
  void what_is_struck_out_is_read_out_as_struck() throws IOException {
    assertEquals(List.of("P: struck: 73.8 °F"), said("Span"));
  }

  @Test
  void what_is_struck_out_in_a_cell_is_read_out_between_the_words_around_it() throws IOException {
    Text text =
        Text.of(
            new Text.Span("was ", Text.Style.PLAIN),
            new Text.Span("73.8 °F", Text.Style.STRUCK),
            new Text.Span(" is 37.8 °F", Text.Style.PLAIN));
    Table.Column column = new Table.Column("Value", Table.Align.LEFT, 1, false);
    Table table =
        new Table(
            "", List.of(column), List.of(new Table.Row(List.of(new Table.Cell(text, Tone.PLAIN)))));
    assertEquals(
        List.of("Document", "H1", "Table", "THead", "TR", "TH", "TBody", "TR", "TD", "Span"),
        types(table));
  }
}
