package org.flitchbook.pdf;

import java.util.List;
import org.flitchbook.document.Chart;

/**
 * The plot of a chart on its page: where a value of each axis stands, in points.
 *
 * @param area on the page
 */
record Plot(Rectangle area, Chart.Axis xAxis, Chart.Axis yAxis) {

  /** The width in points of a column in which few points of a curve can be seen: 180 an inch. */
  private static final double COLUMN = 0.4;

  double x(double value) {
    return left() + width() * (value - xAxis.min()) / (xAxis.max() - xAxis.min());
  }

  double y(double value) {
    return top() + area.height() * (yAxis.max() - value) / (yAxis.max() - yAxis.min());
  }

  double left() {
    return area.left();
  }

  double right() {
    return area.right();
  }

  double top() {
    return area.top();
  }

  double bottom() {
    return area.bottom();
  }

  double width() {
    return area.width();
  }

  /** The part of a band that lies in the plot; never so narrow that it can't be seen. */
  Rectangle area(Chart.Band band) {
    double left = Math.max(left(), x(band.from()));
    double right = Math.max(Math.min(right(), x(band.to())), left + 0.3);
    return new Rectangle(left, top(), right - left, area.height());
  }

  /**
   * A stretch of a curve with no more points than can be seen: of the points in a column of the
   * plot, the first, the lowest, the highest and the last are kept, in their order. No peak is
   * lost.
   */
  Path path(List<Chart.Point> points) {
    Path path = new Path();
    int from = 0;
    while (from < points.size()) {
      from = addColumn(points, from, path);
    }
    if (points.size() == 1) {
      // A lone reading is a line of no length but must be seen.
      path.line(x(points.get(0).x()) + 1.6, y(points.get(0).y()));
    }
    return path;
  }

  /** Adds the column that begins with a point, and returns the first point after it. */
  private int addColumn(List<Chart.Point> points, int from, Path path) {
    long column = column(points.get(from));
    int low = from;
    int high = from;
    int to = from;
    while (to < points.size() && column(points.get(to)) == column) {
      low = points.get(to).y() < points.get(low).y() ? to : low;
      high = points.get(to).y() > points.get(high).y() ? to : high;
      to++;
    }
    int last = -1;
    for (int kept : new int[] {from, Math.min(low, high), Math.max(low, high), to - 1}) {
      if (kept > last) {
        path.to(x(points.get(kept).x()), y(points.get(kept).y()));
        last = kept;
      }
    }
    return to;
  }

  private long column(Chart.Point point) {
    return (long) Math.floor((x(point.x()) - left()) / COLUMN);
  }
}
