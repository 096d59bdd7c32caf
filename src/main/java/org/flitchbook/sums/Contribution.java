package org.flitchbook.sums;

import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Quantity;

/**
 * What one way of curing brings into a piece, with the limit of that way alone.
 *
 * @param worked a share of the green weight; every contribution to one piece on the same weight
 * @param ceiling a share
 */
public record Contribution(Worked worked, Quantity ceiling) {

  public Contribution {
    if (worked.value().dimension() != Dimension.SHARE || ceiling.dimension() != Dimension.SHARE) {
      throw new IllegalArgumentException(
          worked.value() + " under " + ceiling + " is no share of the green weight");
    }
  }
}
