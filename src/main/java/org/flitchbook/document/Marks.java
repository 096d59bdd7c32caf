package org.flitchbook.document;

import java.util.List;
import java.util.Objects;

/**
 * Marked points of one kind, such as the readings by hand.
 *
 * @param name what they are, for the chart's key; empty keeps them out of it
 * @param shape the sign of every one
 */
public record Marks(String name, Shape shape, List<Marker> points) {
  public Marks {
    Objects.requireNonNull(name, "name of marks");
    Objects.requireNonNull(shape, "shape of marks");
    points = List.copyOf(points);
  }
}
