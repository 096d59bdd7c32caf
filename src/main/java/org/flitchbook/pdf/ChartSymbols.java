package org.flitchbook.pdf;

import java.io.IOException;
import java.util.List;
import org.flitchbook.document.Chart;

/** Draws the strokes of curves and the signs of marked points. */
final class ChartSymbols {
  private static final double RADIUS = 2.2;
  private static final double TALL = 7;

  private ChartSymbols() {}

  /** Strokes differ in pattern and weight, not in colour. */
  static void draw(Pen pen, Chart.Stroke stroke, List<Chart.Point> path) throws IOException {
    switch (stroke) {
      case SOLID -> pen.stroke(Color.BLACK, 1.15, Pen.Dash.NONE, path);
      case DASHED -> pen.stroke(Color.BLACK, 0.9, Pen.Dash.LONG, path);
      case DOTTED -> pen.stroke(Color.BLACK, 1.2, Pen.Dash.DOTS, path);
      case THIN -> pen.stroke(Color.GREY, 0.6, Pen.Dash.NONE, path);
      case THIN_DASHED -> pen.stroke(Color.GREY, 0.7, Pen.Dash.LONG, path);
    }
  }

  /** Draws a sign and returns the room that it takes. */
  static Rectangle draw(Pen pen, Chart.Shape shape, double x, double y) throws IOException {
    switch (shape) {
      case DOT -> pen.disc(Color.BLACK, RADIUS, x, y);
      case RING -> {
        pen.disc(Color.BLACK, RADIUS + 0.4, x, y);
        pen.disc(Color.WHITE, RADIUS - 0.4, x, y);
      }
      case DIAMOND -> diamond(pen, x, y, RADIUS + 1);
      case STROKE -> pen.rule(Color.BLACK, 0.9, x, y, x, y - TALL);
    }
    return shape == Chart.Shape.STROKE
        ? new Rectangle(x - 1, y - TALL, 2, TALL)
        : new Rectangle(x - RADIUS, y - RADIUS, 2 * RADIUS, 2 * RADIUS);
  }

  /** With a white edge, so that it stands out from a curve that runs through it. */
  private static void diamond(Pen pen, double x, double y, double r) throws IOException {
    List<Chart.Point> edge = Plot.line(x, y - r, x + r, y, x, y + r, x - r, y, x, y - r);
    pen.stroke(Color.WHITE, 1.4, Pen.Dash.NONE, edge);
    pen.fill(Color.BLACK, edge);
  }
}
