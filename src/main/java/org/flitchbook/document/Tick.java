package org.flitchbook.document;

import java.util.Objects;

/**
 * A mark on an axis.
 *
 * @param label the value in the first unit; may be empty
 * @param second the value in the second unit, drawn small and grey; may be empty
 */
public record Tick(double at, String label, String second) {
  public Tick {
    Demand.finite("tick", at);
    Objects.requireNonNull(label, "tick label");
    Objects.requireNonNull(second, "tick label in the second unit");
  }
}
