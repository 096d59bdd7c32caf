package org.flitchbook.sums;

import java.math.BigDecimal;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Quantity;

/**
 * What of a curve counts towards lethality.
 *
 * @param lowest the temperature below which nothing counts; at it everything does
 * @param heatingOnly whether nothing counts after the last of the highest readings: while meat
 *     cools, the straight line between two readings lies above the true curve
 * @param cap the most logs that are ever displayed, more than 0
 */
public record Credit(Quantity lowest, boolean heatingOnly, BigDecimal cap) {

  public Credit {
    if (lowest.dimension() != Dimension.TEMPERATURE || cap.signum() <= 0) {
      throw new IllegalArgumentException("a lowest of " + lowest + " and a cap of " + cap);
    }
  }
}
