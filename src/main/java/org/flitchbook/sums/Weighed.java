package org.flitchbook.sums;

import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;

/**
 * What several weighings come to, each times a factor: the nitrite in some doses of cure, or meat
 * less its rind.
 *
 * @param net in g
 * @param variance in g², the square of the standard uncertainty after the GUM, of weighings that
 *     don't depend on each other
 */
public record Weighed(Ratio net, Ratio variance) {

  /** Before anything was weighed. */
  public static final Weighed NOTHING = new Weighed(Ratio.ZERO, Ratio.ZERO);

  /**
   * With one weighing more.
   *
   * @param factor the share of what is wanted in it; -1 for what is taken off
   */
  public Weighed and(Weighing weighing, Ratio factor) {
    return new Weighed(
        net.plus(weighing.mass().inBase().times(factor)),
        variance.plus(weighing.variance().times(factor).times(factor)));
  }

  /**
   * The square of the relative standard uncertainty, exact.
   *
   * @throws ArithmeticException where the net is 0
   */
  Ratio relativeVariance() {
    return variance.over(net.times(net));
  }

  /**
   * A tared weighing and what its scale can do.
   *
   * @param mass more than 0
   * @param step readability d of the scale, 0 or more
   * @param repeatability standard deviation of the same mass weighed again, 0 or more
   */
  public record Weighing(Quantity mass, Quantity step, Quantity repeatability) {

    public Weighing {
      if (mass.dimension() != Dimension.MASS || mass.value().signum() <= 0) {
        throw new IllegalArgumentException(mass + " is nothing weighed");
      }
      requireMass(step);
      requireMass(repeatability);
    }

    private static void requireMass(Quantity quantity) {
      if (quantity.dimension() != Dimension.MASS || quantity.value().signum() < 0) {
        throw new IllegalArgumentException(quantity + " is no step or scatter of a scale");
      }
    }

    /** With a repeatability of half a step, for scales of which no more is known. */
    public static Weighing of(Quantity mass, Quantity step) {
      Quantity half = new Quantity(step.value().over(Ratio.of(2)), step.unit());
      return new Weighing(mass, step, half);
    }

    /**
     * The square of the standard uncertainty after the GUM in g²: d²/6 + s², exact, since reading
     * and tare are each rounded to d, d/√12 each.
     */
    Ratio variance() {
      return square(step.inBase()).over(Ratio.of(6)).plus(square(repeatability.inBase()));
    }

    private static Ratio square(Ratio value) {
      return value.times(value);
    }
  }
}
