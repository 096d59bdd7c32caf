package org.flitchbook.document;

import java.util.Objects;

/** A marked point of a chart, in the units of the axes; the label may be empty. */
public record Marker(double x, double y, String label) {
  public Marker {
    Objects.requireNonNull(label, "label of a marker");
    Demand.finite("x of marker \"" + label + "\"", x);
    Demand.finite("y of marker \"" + label + "\"", y);
  }

  /** Whether the other marks the same point, with whatever label. */
  public boolean isAt(Marker other) {
    return x == other.x && y == other.y;
  }
}
