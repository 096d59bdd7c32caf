package org.flitchbook.sums;

import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.measure.Unit;
import org.flitchbook.message.Language;

/**
 * So much of an ingredient and the share of the wanted salt in it.
 *
 * @param mass at least 0
 * @param share from 0 to 100 %
 */
public record Dose(Quantity mass, Quantity share) implements Formula {

  private static final Quantity WHOLE = Quantity.of(100, Unit.PERCENT);

  public Dose {
    if (mass.dimension() != Dimension.MASS || mass.value().signum() < 0) {
      throw new IllegalArgumentException(mass + " is no mass of an ingredient");
    }
    if (share.value().signum() < 0 || share.isAbove(WHOLE)) {
      throw new IllegalArgumentException(share + " is no share from 0 to 100 %");
    }
  }

  private Formula product() {
    return Formula.of(mass).times(Formula.of(share));
  }

  @Override
  public Ratio result() {
    return product().result();
  }

  /** {@code 11.5 g × 6.25 %}. */
  @Override
  public String in(Language language) {
    return product().in(language);
  }

  @Override
  public Object json() {
    return product().json();
  }
}
