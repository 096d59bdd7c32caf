package org.flitchbook.document;

import java.util.Collection;
import java.util.List;

/**
 * Curves over an axis, with limit lines, marked points and bands.
 *
 * <p>Where a curve is broken, a printer draws a thin bridge of dashes over the break; a band says
 * in words what it is.
 *
 * @param caption may be empty
 * @param alternative the chart in words, for those who can't see it; not blank
 * @param guides each within the y axis
 * @param marks each point within both axes
 * @param bands each at least partly within the x axis
 * @param heightPoints height of the plot itself, 60 to 480
 */
public record Chart(
    String caption,
    String alternative,
    Axis x,
    Axis y,
    List<Curve> curves,
    List<Guide> guides,
    List<Marks> marks,
    List<Band> bands,
    int heightPoints)
    implements Block {
  public Chart {
    Require.notBlank("chart in words", alternative);
    curves = List.copyOf(curves);
    guides = List.copyOf(guides);
    marks = List.copyOf(marks);
    bands = List.copyOf(bands);
    Require.between("chart height", heightPoints, 60, 480);
    for (Guide guide : guides) {
      Require.between("limit line \"" + guide.label() + "\"", guide.at(), y.min(), y.max());
    }
    for (Marker marker : marks.stream().map(Marks::points).flatMap(Collection::stream).toList()) {
      Require.between("x of marker \"" + marker.label() + "\"", marker.x(), x.min(), x.max());
      Require.between("y of marker \"" + marker.label() + "\"", marker.y(), y.min(), y.max());
    }
    for (Band band : bands) {
      checkBand(band, x);
    }
  }

  private static void checkBand(Band band, Axis x) {
    double left = Math.min(band.from(), x.min());
    double right = Math.max(band.to(), x.max());
    Require.between("begin of band \"" + band.label() + "\"", band.from(), left, x.max());
    Require.between("end of band \"" + band.label() + "\"", band.to(), x.min(), right);
  }

  /**
   * An axis of a chart, with a linear scale.
   *
   * @param label quantity and unit; may be empty
   * @param min left or bottom end, finite
   * @param max right or top end, finite, above {@code min}
   * @param ticks each within the axis; a printer leaves out labels that have no room
   */
  public record Axis(String label, double min, double max, List<Tick> ticks) {
    public Axis {
      Require.finite("axis minimum", min);
      Require.finite("axis maximum", max);
      if (min >= max) {
        throw new IllegalArgumentException("axis minimum " + min + " is not below maximum " + max);
      }
      ticks = List.copyOf(ticks);
      for (Tick tick : ticks) {
        Require.between("tick \"" + tick.label() + "\"", tick.at(), min, max);
      }
    }
  }

  /**
   * A mark on an axis.
   *
   * @param label the value in the first unit; may be empty
   * @param second the value in the second unit, drawn small and grey; may be empty
   */
  public record Tick(double at, String label, String second) {
    public Tick {
      Require.finite("tick", at);
    }
  }

  /**
   * A curve, broken between its stretches.
   *
   * @param name not blank
   * @param stretches each with a point or more, x never falling; a part outside the axes is cut off
   */
  public record Curve(String name, Stroke stroke, List<List<Point>> stretches) {
    public Curve {
      Require.notBlank("name of a curve", name);
      stretches = stretches.stream().map(List::copyOf).toList();
      for (List<Point> stretch : stretches) {
        Require.notEmpty("stretch of curve \"" + name + "\"", stretch);
        checkOrder(name, stretch);
      }
    }

    private static void checkOrder(String name, List<Point> stretch) {
      for (int i = 1; i < stretch.size(); i++) {
        double before = stretch.get(i - 1).x();
        double x = stretch.get(i).x();
        if (x < before) {
          throw new IllegalArgumentException(
              "curve \"" + name + "\" goes back from x = " + before + " to " + x);
        }
      }
    }
  }

  /** How a curve is drawn, so that curves differ without colour. */
  public enum Stroke {
    SOLID,
    DASHED,
    DOTTED,
    THIN,
    THIN_DASHED
  }

  /** A point of a curve, in the units of the axes; both finite. */
  public record Point(double x, double y) {
    public Point {
      Require.finite("x of a point", x);
      Require.finite("y of a point", y);
    }
  }

  /** A horizontal limit line across a chart, at a value of the y axis; the label is not blank. */
  public record Guide(String label, double at) {
    public Guide {
      Require.notBlank("label of a limit line", label);
      Require.finite("limit line \"" + label + "\"", at);
    }
  }

  /**
   * Marked points of one kind, such as the readings by hand.
   *
   * @param name what they are, for the chart's key; empty keeps them out of it
   * @param shape the sign of every one
   */
  public record Marks(String name, Shape shape, List<Marker> points) {
    public Marks {
      points = List.copyOf(points);
    }
  }

  /**
   * The sign of a marked point: a filled circle; a hollow one, for a reading that doesn't count; a
   * filled diamond; a short stroke that stands on its point, such as a tick on the axis.
   */
  public enum Shape {
    DOT,
    RING,
    DIAMOND,
    STROKE
  }

  /** A marked point of a chart, in the units of the axes; the label may be empty. */
  public record Marker(double x, double y, String label) {
    public Marker {
      Require.finite("x of marker \"" + label + "\"", x);
      Require.finite("y of marker \"" + label + "\"", y);
    }

    /** Whether the other marks the same point, with whatever label. */
    public boolean isAt(Marker other) {
      return x == other.x && y == other.y;
    }
  }

  /**
   * A vertical band of a chart, such as a step or a gap.
   *
   * @param from left edge on the x axis
   * @param to right edge, not left of {@code from}
   * @param label may be empty
   */
  public record Band(double from, double to, String label) {
    public Band {
      Require.finite("begin of band \"" + label + "\"", from);
      Require.finite("end of band \"" + label + "\"", to);
      if (from > to) {
        throw new IllegalArgumentException(
            "band \"" + label + "\" begins at " + from + ", after its end at " + to);
      }
    }
  }
}
