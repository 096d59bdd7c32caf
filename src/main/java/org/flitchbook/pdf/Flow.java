package org.flitchbook.pdf;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.flitchbook.document.Document;
import org.flitchbook.document.Text;
import org.flitchbook.words.Words;
import org.jspecify.annotations.Nullable;

/**
 * What every setter needs: strips run down the pages, and what sticks together is kept together;
 * beside that the setting of text, the root of the structure tree and the fixed wording.
 */
final class Flow {
  private static final double ROUNDING = 0.01;

  /** The part of a page that content may use. */
  final Rectangle frame;

  final TextLayout text;
  final Element root;
  final Words words;
  private final PageSequence pages;
  private final List<Strip> waiting = new ArrayList<>();
  private double y;
  private boolean fresh;
  private boolean held;

  Flow(PDDocument file, Archive archive, Document document) throws IOException {
    this.text = new TextLayout(file, document.words());
    this.pages = new PageSequence(file, archive, text, document);
    this.frame = pages.frame();
    this.root = archive.root;
    this.words = document.words();
    turn();
  }

  /** Adds a strip that is drawn alike wherever it comes to stand. */
  void add(double before, double height, boolean sticks, Pen.Drawing drawing) throws IOException {
    add(new Strip(before, height, sticks, null, drawing));
  }

  /** Adds a strip below the others. */
  void add(Strip strip) throws IOException {
    waiting.add(strip);
    if (!held && !strip.sticks()) {
      settle();
    }
  }

  /** From here on, until it is let go, everything stands on one page if one can hold it. */
  void hold(boolean together) {
    held = together;
  }

  /** Begins a new page, unless nothing stands on this one. */
  void breakPage() throws IOException {
    settle();
    if (!fresh) {
      turn();
    }
  }

  /** Draws what still waits, and head and foot of each page. */
  void finish() throws IOException {
    settle();
    pages.finish();
  }

  private void settle() throws IOException {
    if (!waiting.isEmpty()
        && !fresh
        && !fits(waiting)
        && heightOf(waiting, true) <= frame.height()) {
      turn();
    }
    for (Strip strip : waiting) {
      place(strip);
    }
    waiting.clear();
  }

  private void place(Strip strip) throws IOException {
    if (!fresh && !fits(List.of(strip))) {
      turn();
    }
    if (fresh && strip.again() != null) {
      place(strip.again());
    }
    y += fresh ? 0 : strip.before();
    strip.drawing().draw(pages.pen(), y);
    y += strip.height();
    fresh = false;
  }

  private boolean fits(List<Strip> strips) {
    return y + heightOf(strips, fresh) <= frame.bottom() + ROUNDING;
  }

  private static double heightOf(List<Strip> strips, boolean atTop) {
    double height = atTop ? -strips.get(0).before() : 0;
    for (Strip strip : strips) {
      height += strip.before() + strip.height();
    }
    return height;
  }

  private void turn() throws IOException {
    pages.next();
    y = frame.top();
    fresh = true;
  }

  /**
   * A piece of a page across its whole width, never cut.
   *
   * @param before room above it, left out at the top of a page
   * @param height without the room above
   * @param sticks whether the next strip must stand on the same page
   * @param again what is drawn above it where it begins a page, such as the head of its table
   */
  record Strip(
      double before, double height, boolean sticks, @Nullable Strip again, Pen.Drawing drawing) {}

  /** The pages of a file, one under the pen at a time, with a running head and foot on each. */
  private static final class PageSequence {
    /** 18 millimetres. */
    private static final double MARGIN = 51;

    private static final double EDGE = 33;
    private static final double LEFT_SHARE = 0.6;
    private static final double RIGHT_SHARE = 0.38;

    /** The page number that the foot has room for. */
    private static final int LAST = 99_999;

    private final PDDocument file;
    private final Archive archive;
    private final TextLayout text;
    private final Document document;
    private final double width;
    private final List<TextLine> headLeft;
    private final List<TextLine> headRight;
    private final List<TextLine> footLeft;
    private final PDResources resources = new PDResources();
    private final List<Archive.TaggedPage> pages = new ArrayList<>();
    private @Nullable Pen pen;

    PageSequence(PDDocument file, Archive archive, TextLayout text, Document document) {
      this.file = file;
      this.archive = archive;
      this.text = text;
      this.document = document;
      this.width = document.paper().width() - 2 * MARGIN;
      this.headLeft = lines(document.running().left(), LEFT_SHARE);
      this.headRight = lines(document.running().right(), RIGHT_SHARE);
      this.footLeft = lines(document.running().footLeft(), LEFT_SHARE);
    }

    private List<TextLine> lines(String line, double share) {
      return text.lines(FontSize.SMALL, Text.Style.MUTED, line, share * width);
    }

    private List<TextLine> footRight(int page, int last) {
      String number =
          document.words().say("pdf.page", "page\u00a0{0}\u00a0of\u00a0{1}", page, last);
      String right = document.running().footRight();
      return lines(right.isBlank() ? number : right + " · " + number, RIGHT_SHARE);
    }

    private static double height(List<TextLine> left, List<TextLine> right) {
      return Math.max(TextLine.height(left), TextLine.height(right));
    }

    private double headRule() {
      return EDGE + height(headLeft, headRight) + 3;
    }

    private double footRule() {
      return document.paper().height() - EDGE - height(footLeft, footRight(LAST, LAST)) - 4;
    }

    /** The part of a page that content may use. */
    Rectangle frame() {
      double top = headRule() + 17;
      return new Rectangle(MARGIN, top, width, footRule() - 12 - top);
    }

    Pen pen() {
      if (pen == null) {
        throw new IllegalStateException("no page has been begun");
      }
      return pen;
    }

    void next() throws IOException {
      closePen();
      float tall = (float) document.paper().height();
      PDPage page = new PDPage(new PDRectangle((float) document.paper().width(), tall));
      page.setResources(resources);
      file.addPage(page);
      pages.add(new Archive.TaggedPage(page, archive));
      pen = new Pen(file, pages.get(pages.size() - 1), text, document.words());
    }

    private void closePen() throws IOException {
      if (pen != null) {
        pen.close();
      }
    }

    /** Now that the number of pages is known, draws the running head and foot on each. */
    void finish() throws IOException {
      closePen();
      for (int i = 0; i < pages.size(); i++) {
        try (Pen over = new Pen(file, pages.get(i), text, document.words())) {
          drawRunning(over, i + 1);
        }
      }
    }

    private void drawRunning(Pen over, int page) throws IOException {
      over.as(Pen.Artifact.HEAD);
      draw(over, EDGE, headLeft, headRight);
      if (!document.running().left().isBlank() || !document.running().right().isBlank()) {
        rule(over, headRule());
      }
      over.as(Pen.Artifact.FOOT);
      rule(over, footRule());
      draw(over, footRule() + 4, footLeft, footRight(page, pages.size()));
    }

    private void rule(Pen over, double y) throws IOException {
      over.hairline(Color.HAIR, MARGIN, y, MARGIN + width, y);
    }

    private void draw(Pen over, double top, List<TextLine> left, List<TextLine> right)
        throws IOException {
      over.lines(MARGIN, top, left);
      over.linesUpTo(MARGIN + width, top, right);
    }
  }
}
