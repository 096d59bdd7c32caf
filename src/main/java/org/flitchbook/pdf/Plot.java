package org.flitchbook.pdf;

import java.util.ArrayList;
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

  /** A line through points, each given as x and y. */
  static List<Chart.Point> line(double... places) {
    List<Chart.Point> line = new ArrayList<>();
    for (int i = 0; i < places.length; i += 2) {
      line.add(new Chart.Point(places[i], places[i + 1]));
    }
    return line;
  }

  double x(double value) {
    return area.left() + area.width() * (value - xAxis.min()) / (xAxis.max() - xAxis.min());
  }

  double y(double value) {
    return area.top() + area.height() * (yAxis.max() - value) / (yAxis.max() - yAxis.min());
  }

  Chart.Point place(Chart.Point point) {
    return new Chart.Point(x(point.x()), y(point.y()));
  }

  /** The part of a band that lies in the plot; never so narrow that it can't be seen. */
  Rectangle area(Chart.Band band) {
    double left = Math.max(area.left(), x(band.from()));
    double right = Math.max(Math.min(area.right(), x(band.to())), left + 0.3);
    return new Rectangle(left, area.top(), right - left, area.height());
  }

  /**
   * A stretch of a curve with no more points than can be seen: of the points in a column of the
   * plot, the first, the lowest, the highest and the last are kept, in their order. No peak is
   * lost.
   */
  List<Chart.Point> path(List<Chart.Point> points) {
    List<Chart.Point> path = new ArrayList<>();
    int from = 0;
    while (from < points.size()) {
      from = addColumn(points, from, path);
    }
    if (points.size() == 1) {
      // A lone reading is a line of no length but must be seen.
      path.add(new Chart.Point(path.get(0).x() + 1.6, path.get(0).y()));
    }
    return path;
  }

  /** Adds the column that begins with a point, and returns the first point after it. */
  private int addColumn(List<Chart.Point> points, int from, List<Chart.Point> path) {
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
        path.add(place(points.get(kept)));
        last = kept;
      }
    }
    return to;
  }

  private long column(Chart.Point point) {
    return (long) Math.floor((x(point.x()) - area.left()) / COLUMN);
  }
}
