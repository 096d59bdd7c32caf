package org.flitchbook.pdf;

import java.util.ArrayList;
import java.util.List;

/** A path of straight lines and curves, y running down. */
final class Path {
  enum Kind {
    MOVE,
    LINE,
    CURVE,
    SHUT
  }

  /** One step to (x, y); the other points bend a curve. */
  record Step(Kind kind, double x1, double y1, double x2, double y2, double x, double y) {}

  /** How far the bending points of a quarter circle stand off, in parts of its radius. */
  private static final double QUARTER = 0.5523;

  private final List<Step> steps = new ArrayList<>();

  List<Step> steps() {
    return steps;
  }

  Path move(double x, double y) {
    steps.add(new Step(Kind.MOVE, 0, 0, 0, 0, x, y));
    return this;
  }

  Path line(double x, double y) {
    steps.add(new Step(Kind.LINE, 0, 0, 0, 0, x, y));
    return this;
  }

  Path shut() {
    steps.add(new Step(Kind.SHUT, 0, 0, 0, 0, 0, 0));
    return this;
  }

  static Path circle(double x, double y, double r) {
    double k = r * QUARTER;
    Path path = new Path().move(x + r, y);
    path.curve(x + r, y + k, x + k, y + r, x, y + r);
    path.curve(x - k, y + r, x - r, y + k, x - r, y);
    path.curve(x - r, y - k, x - k, y - r, x, y - r);
    path.curve(x + k, y - r, x + r, y - k, x + r, y);
    return path.shut();
  }

  private void curve(double x1, double y1, double x2, double y2, double x, double y) {
    steps.add(new Step(Kind.CURVE, x1, y1, x2, y2, x, y));
  }
}
