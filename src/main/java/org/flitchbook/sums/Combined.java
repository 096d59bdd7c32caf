package org.flitchbook.sums;

import org.flitchbook.measure.Quantity;

/**
 * Two ways of curing on one piece, such as pumped and then rubbed, put together.
 *
 * @param total the contributions added up
 * @param ceiling the stricter of their limits
 */
public record Combined(Worked total, Quantity ceiling) {

  /** Belongs beside every figure of this kind. */
  public static final String CAUTION =
      "added up against the stricter limit; the handbook's own rule for two methods (FSIS Directive"
          + " 7620.3 p. 33) is from memory and unverified: confirm before relying on it";

  public boolean isAbove() {
    return total.value().isAbove(ceiling);
  }
}
