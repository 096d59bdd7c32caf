package org.flitchbook.sums;

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
}
