package org.flitchbook.sums;

import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Unit;

/**
 * So much of an ingredient and the share of the wanted salt in it.
 *
 * @param mass at least 0
 * @param share from 0 to 100 %
 */
public record Dose(Quantity mass, Quantity share) {

  private static final Quantity WHOLE = Quantity.of(100, Unit.PERCENT);

  public Dose {
    if (mass.dimension() != Dimension.MASS || mass.value().signum() < 0) {
      throw new IllegalArgumentException(mass + " is no mass of an ingredient");
    }
    if (share.value().signum() < 0 || share.isAbove(WHOLE)) {
      throw new IllegalArgumentException(share + " is no share from 0 to 100 %");
    }
  }

  Quantity content() {
    return new Quantity(mass.value().times(share.inBase()), mass.unit());
  }

  /** {@code 11.5 g × 6.25 %}. */
  String shown() {
    return mass + " × " + share;
  }
}
