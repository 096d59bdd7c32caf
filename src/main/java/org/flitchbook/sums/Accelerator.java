package org.flitchbook.sums;

import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;

/**
 * What hastens the cure, and how much of it counts. 9 CFR 424.22(b)(1) reckons the anhydrous sodium
 * salt with a molecular weight of about 198 and scales hydrates up (read); 9 CFR 424.21(c) has a
 * limit of its own for the acids (read), so that they are never turned into the salt here.
 */
public enum Accelerator {
  /** Sodium ascorbate or sodium erythorbate without water. */
  SODIUM_SALT("anhydrous sodium salt", Ratio.ONE),
  /** The same with one water, 216: 600 ppm as fed are 550 ppm of the anhydrous salt. */
  SODIUM_SALT_MONOHYDRATE("anhydrous sodium salt", Ratio.of(198, 216)),
  /** Ascorbic or erythorbic acid, counted as such. */
  ACID("acid", Ratio.ONE);

  private final String countedAs;
  private final Ratio factor;

  Accelerator(String countedAs, Ratio factor) {
    this.countedAs = countedAs;
    this.factor = factor;
  }

  /** What a limit for it is reckoned in; two figures compare only where this is alike. */
  public String countedAs() {
    return countedAs;
  }

  /**
   * What counts of so much as fed: as fed × 198 ÷ 216 for the monohydrate, else all of it.
   *
   * @param asFed a mass or a share of at least 0
   * @throws IllegalArgumentException where it is neither
   */
  public Worked counted(Quantity asFed) {
    boolean fits = asFed.dimension() == Dimension.MASS || asFed.dimension() == Dimension.SHARE;
    if (!fits || asFed.value().signum() < 0) {
      throw new IllegalArgumentException(asFed + " is no amount of an accelerator");
    }
    String sum = factor.equals(Ratio.ONE) ? asFed.toString() : asFed + " × 198 / 216";
    return new Worked(new Quantity(asFed.value().times(factor), asFed.unit()), sum);
  }
}
