package org.flitchbook.pdf;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.flitchbook.document.Document;
import org.flitchbook.words.Words;
import org.jspecify.annotations.Nullable;

/** The pages of a file, one under the pen at a time, and what runs along on each. */
final class Sheets {
  private final PDDocument file;
  private final Fonts fonts;
  private final RunningLines running;
  private final Words words;
  private final PDResources resources = new PDResources();
  private final List<Sheet> sheets = new ArrayList<>();
  private @Nullable Pen pen;

  Sheets(PDDocument file, Fonts fonts, RunningLines running, Words words) {
    this.file = file;
    this.fonts = fonts;
    this.running = running;
    this.words = words;
  }

  Frame frame() {
    return running.frame();
  }

  Pen pen() {
    if (pen == null) {
      throw new IllegalStateException("no page has been begun");
    }
    return pen;
  }

  void next() throws IOException {
    closePen();
    Document.Paper paper = running.paper();
    PDPage page = new PDPage(new PDRectangle((float) paper.width(), (float) paper.height()));
    page.setResources(resources);
    page.setStructParents(sheets.size());
    page.getCOSObject().setName(COSName.getPDFName("Tabs"), "S");
    file.addPage(page);
    Sheet sheet = new Sheet(page);
    sheets.add(sheet);
    pen = new Pen(file, sheet, fonts, words);
  }

  private void closePen() throws IOException {
    if (pen != null) {
      pen.close();
    }
  }

  /** Now that the number of pages is known, draws the running head and foot on each. */
  void finish() throws IOException {
    closePen();
    for (int i = 0; i < sheets.size(); i++) {
      try (Pen over = new Pen(file, sheets.get(i), fonts, words)) {
        running.draw(over, i + 1, sheets.size());
      }
    }
  }

  List<Sheet> all() {
    return sheets;
  }
}
