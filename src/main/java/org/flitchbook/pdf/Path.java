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

  /** A line from where the path ends; where it has not begun, it begins there. */
  void to(double x, double y) {
    steps.add(new Step(steps.isEmpty() ? Kind.MOVE : Kind.LINE, 0, 0, 0, 0, x, y));
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

  /** Whether a path of straight lines runs through a rectangle. */
  boolean crosses(Rectangle area) {
    for (int i = 1; i < steps.size(); i++) {
      Step from = steps.get(i - 1);
      Step to = steps.get(i);
      if (area.crossedBy(from.x, from.y, to.x, to.y)) {
        return true;
      }
    }
    return false;
  }
}
