package org.flitchbook.cli;

import java.io.IOException;
import java.nio.file.Path;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.flitchbook.Picture;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** How the pages look that people look at most: what is set is where it was, in grey. */
final class PicturesTest {

  private static final Path HOME =
      Path.of("src", "test", "resources", "org", "flitchbook", "cli", "pictures");

  private static final int DOTS_AN_INCH = 70;

  private static Path records;

  @BeforeAll
  static void close() {
    records = DemoDay.records();
  }

  /** Each page by the first words on it that no page before has. */
  @ParameterizedTest
  @CsvSource({
    "page-one,          26047-B1,   Batch record",
    "page-one-held,     26043-L1,   Batch record",
    "cure,              26047-B1,   Receipt and cure",
    "smoke,             26047-B1,   Smoke and chill",
    "chill,             26047-B1,   Entries of the step chill",
    "deviations,        deviations, Deviation report",
    "deviations-of-lot, deviations, Lot 26043-L1",
    "day-sheet,         day,        Day sheet",
  })
  void a_page_looks_as_it_did(String name, String print, String words) throws IOException {
    try (PDDocument file = Loader.loadPDF(records.resolve(print + ".pdf").toFile())) {
      int page = page(file, words);
      Picture.check(
          HOME.resolve(name + ".png"),
          new PDFRenderer(file).renderImageWithDPI(page, DOTS_AN_INCH, ImageType.GRAY));
    }
  }

  private static int page(PDDocument file, String words) throws IOException {
    for (int page = 0; page < file.getNumberOfPages(); page++) {
      PDFTextStripper stripper = new PDFTextStripper();
      stripper.setStartPage(page + 1);
      stripper.setEndPage(page + 1);
      String text = stripper.getText(file);
      if (text.lines().anyMatch(line -> line.strip().startsWith(words))) {
        return page;
      }
    }
    throw new AssertionError("no page has \"" + words + "\"");
  }
}
