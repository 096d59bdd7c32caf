package org.flitchbook.pdf;

import java.util.List;
import org.flitchbook.document.Chart;

/**
 * Draws a stretch of a curve with no more points than can be seen: of the points in a column of the
 * plot, the first, the lowest, the highest and the last are kept, in their order. No peak is lost.
 */
final class Thinning {
  /** Width of a column in points: 180 to the inch. */
  private static final double COLUMN = 0.4;

  private final Plot plot;
  private final List<Chart.Point> points;
  private final Path path = new Path();

  private Thinning(List<Chart.Point> points, Plot plot) {
    this.points = points;
    this.plot = plot;
  }

  static Path path(List<Chart.Point> points, Plot plot) {
    Thinning thinning = new Thinning(points, plot);
    int from = 0;
    while (from < points.size()) {
      from = thinning.column(from);
    }
    if (points.size() == 1) {
      // A lone reading is a line of no length but must be seen.
      thinning.path.line(plot.x(points.get(0).x()) + 1.6, plot.y(points.get(0).y()));
    }
    return thinning.path;
  }

  /** Draws the column that begins with a point, and returns the first point after it. */
  private int column(int from) {
    long column = column(points.get(from));
    int low = from;
    int high = from;
    int to = from;
    while (to < points.size() && column(points.get(to)) == column) {
      low = points.get(to).y() < points.get(low).y() ? to : low;
      high = points.get(to).y() > points.get(high).y() ? to : high;
      to++;
    }
    add(from);
    addLater(from, Math.min(low, high));
    addLater(Math.min(low, high), Math.max(low, high));
    addLater(Math.max(low, high), to - 1);
    return to;
  }

  private long column(Chart.Point point) {
    return (long) Math.floor((plot.x(point.x()) - plot.left()) / COLUMN);
  }

  private void addLater(int before, int index) {
    if (index > before) {
      add(index);
    }
  }

  private void add(int index) {
    double x = plot.x(points.get(index).x());
    double y = plot.y(points.get(index).y());
    if (path.steps().isEmpty()) {
      path.move(x, y);
    } else {
      path.line(x, y);
    }
  }
}
