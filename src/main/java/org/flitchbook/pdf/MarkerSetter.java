package org.flitchbook.pdf;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.flitchbook.document.Chart;
import org.flitchbook.document.Text;

/**
 * Draws markers and then their labels, each at the best free place around its marker. A label for
 * which there is no free place is left out; the tables hold its value.
 */
final class MarkerSetter {
  private static final double[] DISTANCES = {5, 12, 22, 34, 48, 66};
  private static final double[][] SIDES = {
    {1, -1}, {1, 0}, {1, 1}, {-1, -1}, {-1, 0}, {-1, 1}, {0, -1}, {0, 1}
  };
  private static final double NEAR = 8;

  private final Setting setting;
  private final Plot plot;
  private final Element figure;
  private final Obstacles obstacles;

  MarkerSetter(Setting setting, Plot plot, Element figure, Obstacles obstacles) {
    this.setting = setting;
    this.plot = plot;
    this.figure = figure;
    this.obstacles = obstacles;
  }

  void drawSigns(Pen pen, List<Chart.Marks> marks) throws IOException {
    for (Chart.Marks each : marks) {
      for (Chart.Marker marker : each.points()) {
        double x = plot.x(marker.x());
        obstacles.take(Signs.draw(pen, figure, each.shape(), x, plot.y(marker.y())));
      }
    }
  }

  void drawLabels(Pen pen, List<Chart.Marks> marks) throws IOException {
    List<Chart.Marker> fromLeft = new ArrayList<>();
    marks.forEach(each -> fromLeft.addAll(each.points()));
    fromLeft.sort(Comparator.comparingDouble(Chart.Marker::x));
    for (Chart.Marker marker : fromLeft) {
      if (!marker.label().isBlank()) {
        label(pen, marker);
      }
    }
  }

  private void label(Pen pen, Chart.Marker marker) throws IOException {
    List<Line> lines =
        setting.lines(Type.SMALL, Text.Style.PLAIN, marker.label(), plot.width() / 2);
    double width = lines.stream().mapToDouble(Line::width).max().orElse(0) + 3;
    Candidate best = best(marker, width, lines.size() * Type.SMALL.leading);
    if (best.cost() >= Obstacles.FORBIDDEN) {
      return;
    }
    Box box = best.box();
    obstacles.take(box);
    if (best.distance() > NEAR) {
      lead(pen, plot.x(marker.x()), plot.y(marker.y()), box);
    }
    pen.fill(figure, Ink.WHITE, box.left(), box.top() + 0.5, box.width(), box.height() - 1);
    for (int i = 0; i < lines.size(); i++) {
      pen.line(
          figure, Type.SMALL, box.left() + 1.5, box.top() + i * Type.SMALL.leading, lines.get(i));
    }
  }

  private record Candidate(Box box, double distance, double cost) {}

  private Candidate best(Chart.Marker marker, double width, double height) {
    double x = plot.x(marker.x());
    double y = plot.y(marker.y());
    Candidate best = new Candidate(new Box(x, y, width, height), 0, Obstacles.FORBIDDEN);
    for (double distance : DISTANCES) {
      for (double[] side : SIDES) {
        Box box = beside(x, y, side, distance, width, height);
        double cost = obstacles.cost(box) + distance;
        best = cost < best.cost() ? new Candidate(box, distance, cost) : best;
      }
    }
    return best;
  }

  private static Box beside(
      double x, double y, double[] side, double distance, double width, double height) {
    double middleX = x + side[0] * (distance + width / 2);
    double across = side[0] == 0 || side[1] != 0 ? distance + height / 2 : 0;
    double middleY = y + side[1] * across;
    return new Box(middleX - width / 2, middleY - height / 2, width, height);
  }

  /** A hairline from a marker to the nearest edge of a label that stands away from it. */
  private void lead(Pen pen, double x, double y, Box box) throws IOException {
    double endX = Math.max(box.left(), Math.min(x, box.right()));
    double endY = Math.max(box.top(), Math.min(y, box.bottom()));
    pen.hairline(figure, Ink.GREY, x, y, endX, endY);
  }
}
