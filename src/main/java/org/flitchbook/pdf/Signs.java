package org.flitchbook.pdf;

import java.io.IOException;
import org.flitchbook.document.Shape;

/** Draws the sign of a marker and returns the room that it takes. */
final class Signs {
  private static final double RADIUS = 2.1;
  private static final double POLE = 11;

  private Signs() {}

  static Box draw(Pen pen, Owner of, Shape shape, double x, double y) throws IOException {
    switch (shape) {
      case DOT -> pen.fill(of, Ink.BLACK, Path.circle(x, y, RADIUS));
      case RING -> ring(pen, of, x, y);
      case CROSS -> cross(pen, of, x, y);
      case FLAG -> flag(pen, of, x, y);
    }
    double up = shape == Shape.FLAG ? POLE : RADIUS;
    return new Box(x - RADIUS, y - up, shape == Shape.FLAG ? 9 : 2 * RADIUS, up + RADIUS);
  }

  private static void ring(Pen pen, Owner of, double x, double y) throws IOException {
    pen.fill(of, Ink.WHITE, Path.circle(x, y, RADIUS + 0.3));
    pen.stroke(of, Ink.BLACK, 0.8, Dash.NONE, Path.circle(x, y, RADIUS + 0.3));
  }

  private static void cross(Pen pen, Owner of, double x, double y) throws IOException {
    Path path = new Path().move(x - RADIUS, y - RADIUS).line(x + RADIUS, y + RADIUS);
    path.move(x - RADIUS, y + RADIUS).line(x + RADIUS, y - RADIUS);
    pen.stroke(of, Ink.BLACK, 0.9, Dash.NONE, path);
  }

  private static void flag(Pen pen, Owner of, double x, double y) throws IOException {
    pen.rule(of, Ink.BLACK, 0.6, x, y, x, y - POLE);
    Path cloth = new Path().move(x, y - POLE).line(x + 6, y - POLE + 2.5).line(x, y - POLE + 5);
    pen.fill(of, Ink.BLACK, cloth.shut());
    pen.fill(of, Ink.BLACK, Path.circle(x, y, 1));
  }
}
