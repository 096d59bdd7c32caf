package org.flitchbook.sums;

import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Quantity;

/**
 * A share of nitrite in meat, reckoned as NO2, as the limits of the European Union are written from
 * October 2025. It compares with its own kind only: a limit on the other basis is out by half, so
 * that mixing the two must not compile.
 *
 * @param amount a share of at least 0, such as ppm
 */
public record NitriteIon(Quantity amount) implements Comparable<NitriteIon> {

  public NitriteIon {
    if (amount.dimension() != Dimension.SHARE || amount.value().signum() < 0) {
      throw new IllegalArgumentException(amount + " is no share of nitrite ion");
    }
  }

  /** The same nitrite reckoned as sodium nitrite: by molar mass, {@link Molar}. */
  public SodiumNitrite asSodiumNitrite() {
    return new SodiumNitrite(
        new Quantity(
            amount.value().times(Molar.NITRITE_ION.as(Molar.SODIUM_NITRITE)), amount.unit()));
  }

  public boolean isAbove(NitriteIon limit) {
    return compareTo(limit) > 0;
  }

  public boolean isBelow(NitriteIon limit) {
    return compareTo(limit) < 0;
  }

  @Override
  public int compareTo(NitriteIon other) {
    return amount.compareTo(other.amount);
  }

  /** {@code 120 ppm as nitrite ion}. */
  public String shown() {
    return amount.shown() + " as nitrite ion";
  }
}
