package org.flitchbook.pdf;

import java.awt.geom.Rectangle2D;
import org.flitchbook.document.Chart;

/** A rectangle of a page, in points from the left and top of the paper, y down. */
record Rectangle(double left, double top, double width, double height) {
  double right() {
    return left + width;
  }

  double bottom() {
    return top + height;
  }

  private Rectangle2D area() {
    return new Rectangle2D.Double(left, top, width, height);
  }

  boolean meets(Rectangle other) {
    return area().intersects(other.area());
  }

  /** Whether another lies inside, so far from each edge. */
  boolean holds(Rectangle other, double edge) {
    return left + edge <= other.left
        && top + edge <= other.top
        && right() - edge >= other.right()
        && bottom() - edge >= other.bottom();
  }

  /** Whether a straight line runs through the rectangle. */
  boolean crossedBy(Chart.Point from, Chart.Point to) {
    return area().intersectsLine(from.x(), from.y(), to.x(), to.y());
  }
}
