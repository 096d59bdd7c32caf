package org.flitchbook.pdf;

import java.io.IOException;
import java.util.List;
import org.flitchbook.document.Document;
import org.flitchbook.document.Text;
import org.flitchbook.words.Words;

/** The running head and foot, and the room that they leave between them. */
final class RunningLines {
  /** 18 millimetres. */
  private static final double MARGIN = 51;

  private static final double EDGE = 33;
  private static final double LEFT_SHARE = 0.6;
  private static final double RIGHT_SHARE = 0.38;

  private final Setting setting;
  private final Words words;
  private final Document.Running running;
  private final Document.Paper paper;
  private final List<Line> headLeft;
  private final List<Line> headRight;
  private final List<Line> footLeft;

  RunningLines(Setting setting, Document document) {
    this.setting = setting;
    this.words = document.words();
    this.running = document.running();
    this.paper = document.paper();
    this.headLeft = lines(running.left(), LEFT_SHARE);
    this.headRight = lines(running.right(), RIGHT_SHARE);
    this.footLeft = lines(running.footLeft(), LEFT_SHARE);
  }

  private List<Line> lines(String text, double share) {
    return setting.lines(Type.SMALL, Text.Style.MUTED, text, share * width());
  }

  private List<Line> footRight(int page, int pages) {
    String number = words.say("pdf.page", "page\u00a0{0}\u00a0of\u00a0{1}", page, pages);
    String text = running.footRight().isBlank() ? number : running.footRight() + " · " + number;
    return lines(text, RIGHT_SHARE);
  }

  Document.Paper paper() {
    return paper;
  }

  private double width() {
    return paper.width() - 2 * MARGIN;
  }

  private static double height(List<Line> left, List<Line> right) {
    return Math.max(left.size(), right.size()) * Type.SMALL.leading;
  }

  private double headRule() {
    return EDGE + height(headLeft, headRight) + 3;
  }

  private double footRule() {
    int widest = 99_999;
    return paper.height() - EDGE - height(footLeft, footRight(widest, widest)) - 4;
  }

  Frame frame() {
    return new Frame(MARGIN, headRule() + 17, width(), footRule() - 12);
  }

  void draw(Pen pen, int page, int pages) throws IOException {
    draw(pen, Artifact.HEAD, EDGE, headLeft, headRight);
    if (!running.left().isBlank() || !running.right().isBlank()) {
      pen.hairline(Artifact.HEAD, Ink.HAIR, MARGIN, headRule(), MARGIN + width(), headRule());
    }
    pen.hairline(Artifact.FOOT, Ink.HAIR, MARGIN, footRule(), MARGIN + width(), footRule());
    draw(pen, Artifact.FOOT, footRule() + 4, footLeft, footRight(page, pages));
  }

  private void draw(Pen pen, Artifact part, double top, List<Line> left, List<Line> right)
      throws IOException {
    for (int i = 0; i < left.size(); i++) {
      pen.line(part, Type.SMALL, MARGIN, top + i * Type.SMALL.leading, left.get(i));
    }
    for (int i = 0; i < right.size(); i++) {
      double x = MARGIN + width() - right.get(i).width();
      pen.line(part, Type.SMALL, x, top + i * Type.SMALL.leading, right.get(i));
    }
  }
}
