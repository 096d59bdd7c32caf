package org.flitchbook.sums;

import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.measure.Unit;

/**
 * Molar masses in g/mol of what cures meat, added up from the atomic weights of the IUPAC table of
 * 1995 (read): N 14.00674, O 15.9994, Na 22.989770, K 39.0983. With later, shorter tables a factor
 * between two of them differs in the sixth decimal, so that no more than five mean anything.
 */
enum Molar {
  NITRITE_ION("0", 2),
  NITRATE_ION("0", 3),
  SODIUM_NITRITE("22.989770", 2),
  SODIUM_NITRATE("22.989770", 3),
  POTASSIUM_NITRITE("39.0983", 2),
  POTASSIUM_NITRATE("39.0983", 3);

  private final Ratio mass;

  Molar(String metal, long oxygens) {
    Ratio oxygen = Ratio.of("15.9994").times(Ratio.of(oxygens));
    this.mass = Ratio.of(metal).plus(Ratio.of("14.00674")).plus(oxygen);
  }

  /** How much of the other holds as many moles as 1 of this: below 1 where the other is lighter. */
  Ratio as(Molar other) {
    return other.mass.over(mass);
  }

  /** The mass in g/mol, exact. */
  Formula term() {
    return Formula.of(new Quantity(mass, Unit.BARE));
  }
}
