package org.flitchbook.document;

import java.util.Objects;

/**
 * A vertical band of a chart, such as a step or a gap.
 *
 * @param from left edge on the x axis
 * @param to right edge, not left of {@code from}
 * @param label may be empty
 */
public record Band(double from, double to, String label) {
  public Band {
    Objects.requireNonNull(label, "label of a band");
    Demand.finite("begin of band \"" + label + "\"", from);
    Demand.finite("end of band \"" + label + "\"", to);
    if (from > to) {
      throw new IllegalArgumentException(
          "band \"" + label + "\" begins at " + from + ", after its end at " + to);
    }
  }
}
