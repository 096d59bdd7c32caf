package org.flitchbook.sums;

import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Level;
import org.flitchbook.measure.Quantity;

/**
 * How an organism dies of heat: D(T) = D × 10^((reference − T) / z).
 *
 * @param reference a temperature with at most nine decimals
 * @param d the time at the reference that leaves a tenth of them, more than 0
 * @param z the difference of temperature that makes D a tenth, more than 0, as 10 °F
 */
public record Resistance(Quantity reference, Quantity d, Quantity z) {

  public Resistance {
    boolean temperatures =
        reference.dimension() == Dimension.TEMPERATURE && z.dimension() == Dimension.TEMPERATURE;
    if (!temperatures || d.dimension() != Dimension.TIME) {
      throw new IllegalArgumentException(
          "a reference of " + reference + ", D of " + d + " and z of " + z);
    }
    if (d.value().signum() <= 0 || z.value().signum() <= 0) {
      throw new IllegalArgumentException("D of " + d + " and z of " + z + " must be more than 0");
    }
  }

  long referenceLevel() {
    return Level.of(reference);
  }

  long zLevels() {
    return Level.ofDifference(z);
  }
}
