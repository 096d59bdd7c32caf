package org.flitchbook.sums;

import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;

/**
 * The meat that a curing sum is reckoned on.
 *
 * @param green as it was weighed, its rind included
 * @param mass the skin-free green weight
 * @param formula how it was found: {@code 5400 g − 540 g rind}, or the weight alone
 */
public record Base(Quantity green, Quantity mass, String formula) {

  public Base {
    if (mass.value().signum() <= 0) {
      throw new IllegalArgumentException("a base of " + mass);
    }
  }

  /** Whether it was weighed with its rind on. */
  public boolean hasRind() {
    return green.compareTo(mass) != 0;
  }

  /** Meat weighed without its rind. */
  public static Base skinFree(Quantity green) {
    return new Base(green, green, green.toString());
  }

  /**
   * The rind weighed by itself, as 9 CFR 424.22(b) asks: the actual skin-free weight.
   *
   * @throws IllegalArgumentException where the rind is not lighter than the whole
   */
  public static Base lessRind(Quantity green, Quantity rind) {
    return new Base(green, green.minus(rind), "(" + green + " − " + rind + " rind)");
  }

  /**
   * The estimated skin-free weight: green weight × (1 − share). The usual share of 10 % is FSIS
   * Directive 7620.3's by quotation (second-hand).
   */
  public static Base lessShare(Quantity green, Quantity share) {
    Quantity left =
        new Quantity(green.value().times(Ratio.ONE.minus(share.inBase())), green.unit());
    return new Base(green, left, "(" + green + " × (1 − " + share + " rind))");
  }
}
