package org.flitchbook.sums;

import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Unit;

/**
 * The meat that a curing sum is made on.
 *
 * @param green as it was weighed, its rind included
 * @param formula of the skin-free green weight: {@code 5400 g − 540 g rind}, or the weight alone
 */
public record Base(Quantity green, Formula formula) {

  private static final Formula WHOLE = Formula.of(Quantity.of(1, Unit.BARE));

  public Base {
    if (formula.result().signum() <= 0) {
      throw new IllegalArgumentException("a base of " + formula.result());
    }
  }

  /** The skin-free green weight, in the unit of the green one. */
  public Quantity mass() {
    return formula.as(green.unit()).value();
  }

  /** Whether it was weighed with its rind on. */
  public boolean hasRind() {
    return green.compareTo(mass()) != 0;
  }

  /** Meat weighed without its rind. */
  public static Base skinFree(Quantity green) {
    return new Base(green, Formula.of(green));
  }

  /**
   * The rind weighed by itself, as 9 CFR 424.22(b) asks: the actual skin-free weight.
   *
   * @throws IllegalArgumentException where the rind is not lighter than the whole
   */
  public static Base lessRind(Quantity green, Quantity rind) {
    return new Base(green, Formula.of(green).minus(rind(rind)));
  }

  /**
   * The estimated skin-free weight: green weight × (1 − share). The usual share of 10 % is FSIS
   * Directive 7620.3's by quotation (second-hand).
   */
  public static Base lessShare(Quantity green, Quantity share) {
    return new Base(green, Formula.of(green).times(WHOLE.minus(rind(share))));
  }

  private static Formula rind(Quantity amount) {
    return new Formula.Term(amount, "rind");
  }
}
