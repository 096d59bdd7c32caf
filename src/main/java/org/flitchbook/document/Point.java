package org.flitchbook.document;

/** A point of a curve, in the units of the axes; both finite. */
public record Point(double x, double y) {
  public Point {
    Demand.finite("x of a point", x);
    Demand.finite("y of a point", y);
  }
}
