package org.flitchbook.check;

import org.flitchbook.lot.Track;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Level;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Unit;
import org.flitchbook.sums.Shift;

/** How a reading and its spread are told. */
final class Shown {

  private Shown() {}

  /** How far the true value may lie from a reading, on one side. */
  static Quantity spread(Track track, int index, Shift side, Unit unit) {
    long off = Math.abs(track.level(index, side) - track.level(index, Shift.AS_WRITTEN));
    return unit.dimension() == Dimension.SHARE
        ? Level.difference(off, Unit.PERCENT)
        : Level.difference(off, unit);
  }

  /** {@code P1: 150.3 °F − 0.6 °F = 149.7 °F}. */
  static String worst(Quantity value, Quantity off, boolean up, String probe) {
    Quantity worst =
        new Quantity(
            up ? value.value().plus(off.value()) : value.value().minus(off.value()), value.unit());
    return probe
        + ": "
        + value.shown()
        + (up ? " + " : " − ")
        + off.shown()
        + " = "
        + worst.shown();
  }
}
