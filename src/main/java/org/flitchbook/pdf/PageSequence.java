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
import org.flitchbook.document.Text;
import org.flitchbook.words.Words;
import org.jspecify.annotations.Nullable;

/** The pages of a file, one under the pen at a time, with a running head and foot on each. */
final class PageSequence {
  /** 18 millimetres. */
  private static final double MARGIN = 51;

  private static final double EDGE = 33;
  private static final double LEFT_SHARE = 0.6;
  private static final double RIGHT_SHARE = 0.38;

  /** The page number that the foot has room for. */
  private static final int LAST = 99_999;

  private final PDDocument file;
  private final Fonts fonts;
  private final TextLayout text;
  private final Words words;
  private final Document.Running running;
  private final Document.Paper paper;
  private final List<TextLine> headLeft;
  private final List<TextLine> headRight;
  private final List<TextLine> footLeft;
  private final PDResources resources = new PDResources();
  private final List<TaggedPage> pages = new ArrayList<>();
  private @Nullable Pen pen;

  PageSequence(PDDocument file, Fonts fonts, TextLayout text, Document document) {
    this.file = file;
    this.fonts = fonts;
    this.text = text;
    this.words = document.words();
    this.running = document.running();
    this.paper = document.paper();
    this.headLeft = lines(running.left(), LEFT_SHARE);
    this.headRight = lines(running.right(), RIGHT_SHARE);
    this.footLeft = lines(running.footLeft(), LEFT_SHARE);
  }

  private List<TextLine> lines(String line, double share) {
    return text.lines(FontSize.SMALL, Text.Style.MUTED, line, share * width());
  }

  private List<TextLine> footRight(int page, int last) {
    String number = words.say("pdf.page", "page\u00a0{0}\u00a0of\u00a0{1}", page, last);
    String line = running.footRight().isBlank() ? number : running.footRight() + " · " + number;
    return lines(line, RIGHT_SHARE);
  }

  private double width() {
    return paper.width() - 2 * MARGIN;
  }

  private static double height(List<TextLine> left, List<TextLine> right) {
    return Math.max(left.size(), right.size()) * FontSize.SMALL.leading;
  }

  private double headRule() {
    return EDGE + height(headLeft, headRight) + 3;
  }

  private double footRule() {
    return paper.height() - EDGE - height(footLeft, footRight(LAST, LAST)) - 4;
  }

  /** The part of a page that content may use. */
  Rectangle frame() {
    double top = headRule() + 17;
    return new Rectangle(MARGIN, top, width(), footRule() - 12 - top);
  }

  Pen pen() {
    if (pen == null) {
      throw new IllegalStateException("no page has been begun");
    }
    return pen;
  }

  void next() throws IOException {
    closePen();
    PDPage page = new PDPage(new PDRectangle((float) paper.width(), (float) paper.height()));
    page.setResources(resources);
    page.setStructParents(pages.size());
    page.getCOSObject().setName(COSName.getPDFName("Tabs"), "S");
    file.addPage(page);
    TaggedPage tagged = new TaggedPage(page);
    pages.add(tagged);
    pen = new Pen(file, tagged, fonts, words);
  }

  private void closePen() throws IOException {
    if (pen != null) {
      pen.close();
    }
  }

  /** Now that the number of pages is known, draws the running head and foot on each. */
  List<TaggedPage> finish() throws IOException {
    closePen();
    for (int i = 0; i < pages.size(); i++) {
      try (Pen over = new Pen(file, pages.get(i), fonts, words)) {
        drawRunning(over, i + 1);
      }
    }
    return pages;
  }

  private void drawRunning(Pen over, int page) throws IOException {
    draw(over, Owner.Artifact.HEAD, EDGE, headLeft, headRight);
    if (!running.left().isBlank() || !running.right().isBlank()) {
      rule(over, Owner.Artifact.HEAD, headRule());
    }
    rule(over, Owner.Artifact.FOOT, footRule());
    draw(over, Owner.Artifact.FOOT, footRule() + 4, footLeft, footRight(page, pages.size()));
  }

  private void rule(Pen over, Owner part, double y) throws IOException {
    over.hairline(part, Color.HAIR, MARGIN, y, MARGIN + width(), y);
  }

  private void draw(Pen over, Owner part, double top, List<TextLine> left, List<TextLine> right)
      throws IOException {
    over.lines(part, FontSize.SMALL, MARGIN, top, left);
    over.linesUpTo(part, FontSize.SMALL, MARGIN + width(), top, right);
  }
}
