package org.flitchbook.pdf;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.interactive.action.PDActionRemoteGoTo;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationLink;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.destination.PDPageXYZDestination;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineNode;
import org.flitchbook.document.Block;
import org.flitchbook.document.Text;
import org.junit.jupiter.api.Test;

/** Bookmarks and links lead to where the headings stand. */
class NavigationTest {
  private static final Block.Paragraph WORDS = new Block.Paragraph(Text.of("words"));

  private static List<String> bookmarks(Block... blocks) throws IOException {
    try (PDDocument file = Loader.loadPDF(Pages.print(Pages.document(blocks)))) {
      List<String> told = new ArrayList<>();
      tell(file, file.getDocumentCatalog().getDocumentOutline(), "", told);
      return told;
    }
  }

  private static void tell(PDDocument file, PDOutlineNode node, String indent, List<String> told)
      throws IOException {
    for (PDOutlineItem item : node.children()) {
      int page = file.getPages().indexOf(item.findDestinationPage(file)) + 1;
      told.add(indent + item.getTitle() + ", page " + page);
      tell(file, item, indent + "  ", told);
    }
  }

  @Test
  void each_heading_of_the_first_two_levels_has_a_bookmark() throws IOException {
    assertEquals(
        List.of(
            "Day sheet, page 1",
            "before any part, page 1",
            "Cure, page 1",
            "  turned, page 2",
            "Smoke, page 2"),
        bookmarks(
            new Block.Heading(2, "before any part"),
            WORDS,
            new Block.Heading(1, "Cure"),
            WORDS,
            new Block.PageBreak(),
            new Block.Heading(2, "turned"),
            new Block.Heading(3, "too deep"),
            WORDS,
            new Block.Heading(1, "Smoke"),
            WORDS));
  }

  private static List<PDAnnotationLink> links(PDPage page) throws IOException {
    return page.getAnnotations().stream().map(PDAnnotationLink.class::cast).toList();
  }

  @Test
  void a_link_leads_to_the_section_that_it_names() throws IOException {
    Block.Paragraph leading =
        new Block.Paragraph(Text.leading("see there", new Text.Target.Section("Smoke")));
    byte[] pdf =
        Pages.print(
            Pages.document(leading, new Block.PageBreak(), new Block.Heading(2, "Smoke"), WORDS));
    try (PDDocument file = Loader.loadPDF(pdf)) {
      PDAnnotationLink link = links(file.getPage(0)).get(0);
      PDPageXYZDestination to = assertInstanceOf(PDPageXYZDestination.class, link.getDestination());
      assertEquals(1, to.retrievePageNumber());
      assertEquals("Smoke", link.getContents());
    }
  }

  @Test
  void a_link_leads_to_the_file_beside_it() throws IOException {
    Block.Paragraph leading =
        new Block.Paragraph(Text.leading("26047-B1", new Text.Target.File("26047-B1.pdf")));
    try (PDDocument file = Loader.loadPDF(Pages.print(Pages.document(leading)))) {
      PDAnnotationLink link = links(file.getPage(0)).get(0);
      PDActionRemoteGoTo action = assertInstanceOf(PDActionRemoteGoTo.class, link.getAction());
      assertEquals("26047-B1.pdf", action.getFile().getFile());
      assertEquals("26047-B1.pdf", link.getContents());
    }
  }

  @Test
  void a_link_broken_over_two_lines_has_a_place_on_each() throws IOException {
    String words = "word ".repeat(30);
    Block.Paragraph leading =
        new Block.Paragraph(Text.leading(words, new Text.Target.File("a.pdf")));
    try (PDDocument file = Loader.loadPDF(Pages.print(Pages.document(leading)))) {
      assertEquals(2, links(file.getPage(0)).size());
    }
  }

  @Test
  void a_section_that_is_not_there_is_not_linked() throws IOException {
    Block.Paragraph leading =
        new Block.Paragraph(Text.leading("see there", new Text.Target.Section("Smoke")));
    try (PDDocument file = Loader.loadPDF(Pages.print(Pages.document(leading)))) {
      assertEquals(List.of(), links(file.getPage(0)));
    }
  }
}
