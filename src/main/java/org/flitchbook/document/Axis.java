package org.flitchbook.document;

import java.util.List;
import java.util.Objects;

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
    Objects.requireNonNull(label, "axis label");
    Demand.finite("axis minimum", min);
    Demand.finite("axis maximum", max);
    if (min >= max) {
      throw new IllegalArgumentException("axis minimum " + min + " is not below maximum " + max);
    }
    ticks = List.copyOf(ticks);
    for (Tick tick : ticks) {
      Demand.between("tick \"" + tick.label() + "\"", tick.at(), min, max);
    }
  }
}
