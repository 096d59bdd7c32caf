package org.flitchbook.pdf;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.TimeZone;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.flitchbook.document.Chart;
import org.flitchbook.document.Document;
import org.junit.jupiter.api.Test;

class PdfFileTest {
  @Test
  void the_same_document_gives_the_same_bytes() {
    assertArrayEquals(
        Pages.print(SampleRecord.on(Document.Paper.LETTER)),
        Pages.print(SampleRecord.on(Document.Paper.LETTER)));
  }

  @Test
  void locale_and_zone_of_the_machine_change_nothing() {
    byte[] here = Pages.print(SampleRecord.on(Document.Paper.A4));
    Locale locale = Locale.getDefault();
    TimeZone zone = TimeZone.getDefault();
    try {
      for (String tag : List.of("tr-TR", "ar-EG-u-nu-arab", "hi-IN-u-nu-deva")) {
        Locale.setDefault(Locale.forLanguageTag(tag));
        TimeZone.setDefault(TimeZone.getTimeZone("Asia/Tokyo"));
        assertArrayEquals(here, Pages.print(SampleRecord.on(Document.Paper.A4)), tag);
      }
    } finally {
      Locale.setDefault(locale);
      TimeZone.setDefault(zone);
    }
  }

  @Test
  void every_font_is_embedded() throws IOException {
    try (PDDocument file = Loader.loadPDF(Pages.print(SampleRecord.on(Document.Paper.A4)))) {
      int fonts = 0;
      for (PDPage page : file.getPages()) {
        for (COSName name : page.getResources().getFontNames()) {
          PDFont font = page.getResources().getFont(name);
          assertTrue(font.isEmbedded(), font.getName());
          fonts++;
        }
      }
      assertEquals(8, fonts);
    }
  }

  @Test
  void the_file_names_itself_and_its_date() throws IOException {
    try (PDDocument file = Loader.loadPDF(Pages.print(SampleRecord.on(Document.Paper.A4)))) {
      PDDocumentInformation information = file.getDocumentInformation();
      assertEquals("Batch record 26047-B1", information.getTitle());
      assertEquals(
          Instant.parse("2026-02-24T22:30:00Z"), information.getCreationDate().toInstant());
      assertEquals("en-US", file.getDocumentCatalog().getLanguage());
      assertNotNull(file.getDocumentCatalog().getMetadata());
    }
  }

  @Test
  void pages_have_the_size_of_the_paper() throws IOException {
    for (Document.Paper paper : Document.Paper.values()) {
      try (PDDocument file = Loader.loadPDF(Pages.print(SampleRecord.on(paper)))) {
        PDRectangle box = file.getPage(0).getMediaBox();
        assertEquals(paper.width(), box.getWidth(), 0.01);
        assertEquals(paper.height(), box.getHeight(), 0.01);
      }
    }
  }

  @Test
  void a_curve_of_fifty_thousand_points_is_thinned_and_keeps_its_peak() {
    List<Chart.Point> points = new ArrayList<>();
    for (int i = 0; i < 50_000; i++) {
      points.add(new Chart.Point(i, i == 31_234 ? 99 : i % 7));
    }
    byte[] flat = Pages.print(Pages.document(chart(points.subList(0, 20))));
    byte[] full = Pages.print(Pages.document(chart(points)));
    assertTrue(full.length - flat.length < 40_000, "bytes: " + (full.length - flat.length));
    points.set(31_234, new Chart.Point(31_234, 3));
    assertFalse(java.util.Arrays.equals(full, Pages.print(Pages.document(chart(points)))));
  }

  private static Chart chart(List<Chart.Point> points) {
    return new Chart(
        "",
        "A curve",
        new Chart.Axis("", 0, 50_000, List.of()),
        new Chart.Axis("", 0, 100, List.of()),
        List.of(new Chart.Curve("P1", Chart.Stroke.SOLID, List.of(points))),
        List.of(),
        List.of(),
        List.of(),
        120);
  }
}
