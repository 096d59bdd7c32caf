package org.flitchbook.sums;

import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Quantity;

/**
 * A share of nitrite in meat, reckoned as NaNO2, as the limits of the United States are written. It
 * compares with its own kind only: a limit on the other basis is out by half, so that mixing the
 * two must not compile.
 *
 * @param amount a share of at least 0, such as ppm
 */
public record SodiumNitrite(Quantity amount) implements Comparable<SodiumNitrite> {

  public SodiumNitrite {
    if (amount.dimension() != Dimension.SHARE || amount.value().signum() < 0) {
      throw new IllegalArgumentException(amount + " is no share of sodium nitrite");
    }
  }

  /** The same nitrite reckoned as the nitrite ion: by molar mass, {@link Molar}. */
  public NitriteIon asNitriteIon() {
    return new NitriteIon(
        new Quantity(
            amount.value().times(Molar.SODIUM_NITRITE.as(Molar.NITRITE_ION)), amount.unit()));
  }

  public boolean isAbove(SodiumNitrite limit) {
    return compareTo(limit) > 0;
  }

  public boolean isBelow(SodiumNitrite limit) {
    return compareTo(limit) < 0;
  }

  @Override
  public int compareTo(SodiumNitrite other) {
    return amount.compareTo(other.amount);
  }

  /** {@code 120 ppm as sodium nitrite}. */
  public String shown() {
    return amount.shown() + " as sodium nitrite";
  }
}
