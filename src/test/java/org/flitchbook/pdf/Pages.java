package org.flitchbook.pdf;

import java.io.IOException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.GregorianCalendar;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.flitchbook.Wording;
import org.flitchbook.document.Block;
import org.flitchbook.document.Document;
import org.flitchbook.document.Table;
import org.flitchbook.document.Text;
import org.flitchbook.document.Tone;

/** Makes documents and reads what was printed. */
public final class Pages {
  private Pages() {}

  public static Document document(Block... blocks) {
    return document(Arrays.asList(blocks));
  }

  static Document document(List<Block> blocks) {
    return new Document(
        "Day sheet",
        "",
        Wording.ENGLISH,
        "day sheet r1",
        Instant.parse("2026-02-24T22:30:00Z"),
        Document.Paper.A4,
        new Document.Running("Wrenfold Smokeyard", "plan version 3", "times in EST", "r1"),
        Optional.empty(),
        blocks);
  }

  /** Puts other attachments into a file in the place of its own. */
  public static void attach(PDDocument file, List<Attachment> attachments) throws IOException {
    Archive.enclose(file, new GregorianCalendar(2026, 1, 24), attachments);
  }

  /** A print that carries nothing. */
  public static byte[] print(Document document) {
    return Pdf.print(document, List.of());
  }

  /** A table whose cells name their row and column. */
  static Table table(int rows) {
    List<Table.Column> columns =
        List.of(
            new Table.Column("Time", Table.Align.LEFT, 1, true),
            new Table.Column("Probe", Table.Align.LEFT, 1, false),
            new Table.Column("Reading", Table.Align.RIGHT, 1, false));
    List<Table.Row> all = new ArrayList<>();
    for (int i = 1; i <= rows; i++) {
      all.add(row("time " + i, "P1", i + ".0 °F"));
    }
    return new Table("Readings", columns, all);
  }

  static Table.Row row(String... words) {
    return new Table.Row(
        Arrays.stream(words).map(word -> new Table.Cell(Text.of(word), Tone.PLAIN)).toList());
  }

  /** The text of each page, in the order in which it was written. */
  static List<String> texts(byte[] pdf) throws IOException {
    try (PDDocument file = Loader.loadPDF(pdf)) {
      List<String> pages = new ArrayList<>();
      for (int page = 1; page <= file.getNumberOfPages(); page++) {
        PDFTextStripper stripper = new PDFTextStripper();
        stripper.setLineSeparator("\n");
        stripper.setStartPage(page);
        stripper.setEndPage(page);
        pages.add(stripper.getText(file));
      }
      return pages;
    }
  }

  static List<String> texts(Block... blocks) throws IOException {
    return texts(print(document(blocks)));
  }
}
