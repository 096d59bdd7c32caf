package org.flitchbook.pdf;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.flitchbook.document.Chart;
import org.flitchbook.document.Text;

/**
 * The labels of the limit lines, each on its line within the plot: at the right where it is free,
 * else further left, above the line or below it. A limit line is never without its label.
 */
final class GuideLabels {
  private static final double STEP = 8;
  private static final double EDGE = 4;
  private static final double BELOW = 6;
  private static final double DISTANCE = 0.08;
  private static final Type TYPE = Type.SMALL;

  private final Setting setting;
  private final Plot plot;
  private final Element figure;
  private final Obstacles obstacles;

  GuideLabels(Setting setting, Plot plot, Element figure, Obstacles obstacles) {
    this.setting = setting;
    this.plot = plot;
    this.figure = figure;
    this.obstacles = obstacles;
  }

  void draw(Pen pen, List<Chart.Guide> guides) throws IOException {
    List<Chart.Guide> fromTop = new ArrayList<>(guides);
    fromTop.sort(Comparator.comparingDouble(Chart.Guide::at).reversed());
    for (Chart.Guide guide : fromTop) {
      double measure = plot.width() - 2 * EDGE;
      Line line = setting.lines(TYPE, Text.Style.STRONG, guide.label(), measure).get(0);
      Box box = best(line.width() + 3, plot.y(guide.at()));
      obstacles.take(box);
      pen.fill(figure, Ink.WHITE, box.left(), box.top(), box.width(), box.height());
      pen.line(figure, TYPE, box.left() + 1.5, box.top() - 0.6, line);
    }
  }

  private Box best(double width, double line) {
    Box best = place(width, line, plot.right() - EDGE, false);
    double least = Double.MAX_VALUE;
    for (double right = plot.right() - EDGE; right - width > plot.left(); right -= STEP) {
      for (boolean below : new boolean[] {false, true}) {
        Box box = place(width, line, right, below);
        double far = DISTANCE * (plot.right() - right) + (below ? BELOW : 0);
        double cost = obstacles.cost(box) + far;
        best = cost < least ? box : best;
        least = Math.min(least, cost);
      }
    }
    return best;
  }

  private static Box place(double width, double line, double right, boolean below) {
    double tall = TYPE.leading - 1.2;
    return new Box(right - width, below ? line + 0.7 : line - 0.7 - tall, width, tall);
  }
}
