package org.flitchbook.document;

import java.util.Objects;

/** A marked point of a chart, in the units of the axes; the label may be empty. */
public record Marker(Shape shape, double x, double y, String label) {
  public Marker {
    Objects.requireNonNull(shape, "shape of a marker");
    Objects.requireNonNull(label, "label of a marker");
    Demand.finite("x of marker \"" + label + "\"", x);
    Demand.finite("y of marker \"" + label + "\"", y);
  }
}
