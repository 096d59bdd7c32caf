package org.flitchbook.document;

import java.util.Collection;
import java.util.List;
import java.util.Objects;

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
    Objects.requireNonNull(caption, "chart caption");
    Demand.words("chart in words", alternative);
    Objects.requireNonNull(x, "x axis");
    Objects.requireNonNull(y, "y axis");
    curves = List.copyOf(curves);
    guides = List.copyOf(guides);
    marks = List.copyOf(marks);
    bands = List.copyOf(bands);
    Demand.between("chart height", heightPoints, 60, 480);
    for (Guide guide : guides) {
      Demand.between("limit line \"" + guide.label() + "\"", guide.at(), y.min(), y.max());
    }
    for (Marker marker : marks.stream().map(Marks::points).flatMap(Collection::stream).toList()) {
      Demand.between("x of marker \"" + marker.label() + "\"", marker.x(), x.min(), x.max());
      Demand.between("y of marker \"" + marker.label() + "\"", marker.y(), y.min(), y.max());
    }
    for (Band band : bands) {
      checkBand(band, x);
    }
  }

  private static void checkBand(Band band, Axis x) {
    double left = Math.min(band.from(), x.min());
    double right = Math.max(band.to(), x.max());
    Demand.between("begin of band \"" + band.label() + "\"", band.from(), left, x.max());
    Demand.between("end of band \"" + band.label() + "\"", band.to(), x.min(), right);
  }
}
