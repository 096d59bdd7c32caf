package org.flitchbook.document;

import java.util.List;
import java.util.Objects;

/**
 * A curve, broken between its stretches.
 *
 * @param name not blank
 * @param stretches each with a point or more, x never falling; a part outside the axes is cut off
 */
public record Curve(String name, Stroke stroke, List<List<Point>> stretches) {
  public Curve {
    Demand.words("name of a curve", name);
    Objects.requireNonNull(stroke, "stroke of a curve");
    stretches = stretches.stream().map(List::copyOf).toList();
    for (List<Point> stretch : stretches) {
      Demand.some("stretch of curve \"" + name + "\"", stretch);
      checkOrder(name, stretch);
    }
  }

  private static void checkOrder(String name, List<Point> stretch) {
    double before = Double.NEGATIVE_INFINITY;
    for (Point point : stretch) {
      if (point.x() < before) {
        throw new IllegalArgumentException(
            "curve \"" + name + "\" goes back from x = " + before + " to " + point.x());
      }
      before = point.x();
    }
  }
}
