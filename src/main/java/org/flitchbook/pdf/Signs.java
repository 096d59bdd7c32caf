package org.flitchbook.pdf;

import java.io.IOException;
import org.flitchbook.document.Chart;

/** Draws the sign of a marked point and returns the room that it takes. */
final class Signs {
  private static final double RADIUS = 2.2;
  private static final double TALL = 7;

  private Signs() {}

  static Box draw(Pen pen, Owner of, Chart.Shape shape, double x, double y) throws IOException {
    switch (shape) {
      case DOT -> pen.fill(of, Ink.BLACK, Path.circle(x, y, RADIUS));
      case RING -> ring(pen, of, x, y);
      case DIAMOND -> diamond(pen, of, x, y);
      case STROKE -> pen.rule(of, Ink.BLACK, 0.9, x, y, x, y - TALL);
    }
    return shape == Chart.Shape.STROKE
        ? new Box(x - 1, y - TALL, 2, TALL)
        : new Box(x - RADIUS, y - RADIUS, 2 * RADIUS, 2 * RADIUS);
  }

  private static void ring(Pen pen, Owner of, double x, double y) throws IOException {
    pen.fill(of, Ink.WHITE, Path.circle(x, y, RADIUS));
    pen.stroke(of, Ink.BLACK, 0.8, Dash.NONE, Path.circle(x, y, RADIUS));
  }

  /** With a white edge, so that it stands out from a curve that runs through it. */
  private static void diamond(Pen pen, Owner of, double x, double y) throws IOException {
    double r = RADIUS + 1;
    Path path = new Path().move(x, y - r).line(x + r, y).line(x, y + r).line(x - r, y).shut();
    pen.stroke(of, Ink.WHITE, 1.4, Dash.NONE, path);
    pen.fill(of, Ink.BLACK, path);
  }
}
