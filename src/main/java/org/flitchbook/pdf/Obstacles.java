package org.flitchbook.pdf;

import java.util.ArrayList;
import java.util.List;
import org.flitchbook.document.Chart;

/** What a label in a plot should keep clear of: curves, limit lines, markers, other labels. */
final class Obstacles {
  static final double FORBIDDEN = 1e6;
  private static final double CURVE = 60;
  private static final double LIMIT = 25;

  private record Segment(double x1, double y1, double x2, double y2) {}

  private final Box bounds;
  private final List<Segment> curves = new ArrayList<>();
  private final List<Double> limits = new ArrayList<>();
  private final List<Box> taken = new ArrayList<>();

  Obstacles(Plot plot, List<Path> paths, List<Chart.Guide> guides) {
    bounds = new Box(plot.left() + 1, plot.top() + 1, plot.width() - 2, plot.height() - 2);
    guides.forEach(guide -> limits.add(plot.y(guide.at())));
    for (Path path : paths) {
      for (int i = 1; i < path.steps().size(); i++) {
        Path.Step from = path.steps().get(i - 1);
        Path.Step to = path.steps().get(i);
        curves.add(new Segment(from.x(), from.y(), to.x(), to.y()));
      }
    }
  }

  void take(Box box) {
    taken.add(box);
  }

  /** How bad a place for a label is; at {@link #FORBIDDEN} and above it must not be used. */
  double cost(Box box) {
    if (!bounds.holds(box) || taken.stream().anyMatch(box::meets)) {
      return FORBIDDEN;
    }
    boolean onCurve = curves.stream().anyMatch(s -> box.crossedBy(s.x1(), s.y1(), s.x2(), s.y2()));
    long onLimits = limits.stream().filter(y -> box.top() < y && y < box.bottom()).count();
    return (onCurve ? CURVE : 0) + LIMIT * onLimits;
  }
}
