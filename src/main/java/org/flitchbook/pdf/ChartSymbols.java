package org.flitchbook.pdf;

import java.io.IOException;
import org.flitchbook.document.Chart;

/** Draws the strokes of curves and the signs of marked points. */
final class ChartSymbols {
  private static final double RADIUS = 2.2;
  private static final double TALL = 7;

  private ChartSymbols() {}

  /** Strokes differ in pattern and weight, not in colour. */
  static void draw(Pen pen, Owner of, Chart.Stroke stroke, Path path) throws IOException {
    switch (stroke) {
      case SOLID -> pen.stroke(of, Color.BLACK, 1.15, Pen.Dash.NONE, path);
      case DASHED -> pen.stroke(of, Color.BLACK, 0.9, Pen.Dash.LONG, path);
      case DOTTED -> pen.stroke(of, Color.BLACK, 1.2, Pen.Dash.DOTS, path);
      case THIN -> pen.stroke(of, Color.GREY, 0.6, Pen.Dash.NONE, path);
      case THIN_DASHED -> pen.stroke(of, Color.GREY, 0.7, Pen.Dash.LONG, path);
    }
  }

  /** Draws a sign and returns the room that it takes. */
  static Rectangle draw(Pen pen, Owner of, Chart.Shape shape, double x, double y)
      throws IOException {
    switch (shape) {
      case DOT -> pen.fill(of, Color.BLACK, Path.circle(x, y, RADIUS));
      case RING -> ring(pen, of, x, y);
      case DIAMOND -> diamond(pen, of, x, y);
      case STROKE -> pen.rule(of, Color.BLACK, 0.9, x, y, x, y - TALL);
    }
    return shape == Chart.Shape.STROKE
        ? new Rectangle(x - 1, y - TALL, 2, TALL)
        : new Rectangle(x - RADIUS, y - RADIUS, 2 * RADIUS, 2 * RADIUS);
  }

  private static void ring(Pen pen, Owner of, double x, double y) throws IOException {
    pen.fill(of, Color.WHITE, Path.circle(x, y, RADIUS));
    pen.stroke(of, Color.BLACK, 0.8, Pen.Dash.NONE, Path.circle(x, y, RADIUS));
  }

  /** With a white edge, so that it stands out from a curve that runs through it. */
  private static void diamond(Pen pen, Owner of, double x, double y) throws IOException {
    double r = RADIUS + 1;
    Path path = new Path().move(x, y - r).line(x + r, y).line(x, y + r).line(x - r, y).shut();
    pen.stroke(of, Color.WHITE, 1.4, Pen.Dash.NONE, path);
    pen.fill(of, Color.BLACK, path);
  }
}
