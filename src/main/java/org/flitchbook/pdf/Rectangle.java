package org.flitchbook.pdf;

/** A rectangle of a page, in points from the left and top of the paper, y down. */
record Rectangle(double left, double top, double width, double height) {
  double right() {
    return left + width;
  }

  double bottom() {
    return top + height;
  }

  /** What remains inside when so much is cut off at each side. */
  Rectangle inset(double edge) {
    return new Rectangle(left + edge, top + edge, width - 2 * edge, height - 2 * edge);
  }

  boolean meets(Rectangle other) {
    return left < other.right()
        && other.left < right()
        && top < other.bottom()
        && other.top < bottom();
  }

  boolean holds(Rectangle other) {
    return left <= other.left
        && top <= other.top
        && right() >= other.right()
        && bottom() >= other.bottom();
  }

  /** Whether a straight line runs through the rectangle (Liang and Barsky's clipping test). */
  boolean crossedBy(double x1, double y1, double x2, double y2) {
    double[] span = {0, 1};
    return cut(span, x1 - x2, x1 - left)
        && cut(span, x2 - x1, right() - x1)
        && cut(span, y1 - y2, y1 - top)
        && cut(span, y2 - y1, bottom() - y1);
  }

  private static boolean cut(double[] span, double p, double q) {
    if (p == 0) {
      return q >= 0;
    }
    double at = q / p;
    if (p < 0) {
      span[0] = Math.max(span[0], at);
    } else {
      span[1] = Math.min(span[1], at);
    }
    return span[0] <= span[1];
  }
}
