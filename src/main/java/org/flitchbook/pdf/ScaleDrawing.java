package org.flitchbook.pdf;

import java.io.IOException;
import org.flitchbook.document.Table;

/** Draws a scale: a line up to the limit's tick, dashes beyond it, and the mark of the value. */
final class ScaleDrawing {
  /** The width that a column of scales needs, in points. */
  static final double WIDTH = 58;

  private static final double LIMIT = 0.62;
  private static final double EDGE = 3.4;
  private static final double TICK = 4.4;
  private static final double MARK = 2.9;

  private final Pen pen;
  private final Element figure;
  private final double left;
  private final double right;
  private final double middle;

  ScaleDrawing(Pen pen, Element figure, double x, double width, double middle) {
    this.pen = pen;
    this.figure = figure;
    this.left = x + EDGE;
    this.right = x + width - EDGE;
    this.middle = middle;
  }

  void draw(Table.Scale scale) throws IOException {
    double foot = pen.fromBottom(middle + TICK);
    figure.box(left - EDGE, foot, right + EDGE, foot + 2 * TICK);
    double limit = left + LIMIT * (right - left);
    pen.rule(figure, Ink.GREY, 0.7, left, middle, limit, middle);
    Path over = new Path().move(limit, middle).line(right, middle);
    pen.stroke(figure, Ink.GREY, 0.7, Dash.BRIDGE, over);
    pen.rule(figure, Ink.BLACK, 1.1, limit, middle - TICK, limit, middle + TICK);
    double x = limit + scale.at() * (scale.at() < 0 ? limit - left : right - limit);
    if (scale.isAtEnd()) {
      arrow(x, Math.signum(scale.at()));
    } else {
      Signs.draw(pen, figure, org.flitchbook.document.Chart.Shape.DIAMOND, x, middle);
    }
  }

  private void arrow(double x, double way) throws IOException {
    double back = x - way * 2 * MARK;
    Path head = new Path().move(x + way * EDGE, middle).line(back, middle - MARK);
    pen.fill(figure, Ink.BLACK, head.line(back, middle + MARK).shut());
  }
}
