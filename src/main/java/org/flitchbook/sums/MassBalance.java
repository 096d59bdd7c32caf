package org.flitchbook.sums;

import java.util.List;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Unit;

/**
 * Where the last weight of a lot went: last = packed + ends + waste + samples + unexplained.
 *
 * @param last more than 0
 * @param packed 0 or more, as are ends, waste and samples
 */
public record MassBalance(
    Quantity last, Quantity packed, Quantity ends, Quantity waste, Quantity samples) {

  public MassBalance {
    for (Quantity mass : List.of(last, packed, ends, waste, samples)) {
      if (mass.dimension() != Dimension.MASS || mass.value().signum() < 0) {
        throw new IllegalArgumentException(mass + " is no mass of a lot");
      }
    }
    if (last.value().signum() == 0) {
      throw new IllegalArgumentException("a lot that weighs nothing has no balance");
    }
  }

  /**
   * What is missing; below 0 where more came out than there was.
   *
   * @return in g
   */
  public Worked unexplained() {
    return left().as(Unit.GRAM);
  }

  /**
   * What is missing ÷ the last weight × 100.
   *
   * @return in %, below 0 where more came out than there was
   */
  public Worked unexplainedShare() {
    return Sums.share(left().over(Formula.of(last)), Unit.PERCENT);
  }

  private Formula left() {
    return new Formula.Chain(
        Formula.of(last),
        List.of(
            less(packed, "packed"),
            less(ends, "ends"),
            less(waste, "waste"),
            less(samples, "samples")));
  }

  private static Formula.Link less(Quantity mass, String of) {
    return new Formula.Link(Formula.Operator.MINUS, new Formula.Term(mass, of));
  }
}
