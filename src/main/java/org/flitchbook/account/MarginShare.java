package org.flitchbook.account;

import java.util.Optional;
import org.flitchbook.check.Finding;
import org.flitchbook.check.Measured;
import org.flitchbook.check.Verdict;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.measure.Unit;

/**
 * The margin of a finding as a share of its limit, below 0 where the limit is missed.
 *
 * @param limit its id
 * @param share in %; of {@link #DEGREES} where the limit is a temperature, which has no zero that
 *     it could be a part of
 */
public record MarginShare(String limit, Quantity share) {

  private static final Quantity DEGREES = Quantity.of(10, Unit.CELSIUS);

  /** Empty where nothing was measured, and while the limit is pending. */
  public static Optional<MarginShare> of(Finding finding) {
    return finding
        .measured()
        .filter(measured -> finding.verdict() != Verdict.PENDING)
        .map(measured -> new MarginShare(finding.limit().id(), share(measured)));
  }

  /** All of it is over a limit of 0. */
  private static Quantity share(Measured measured) {
    Quantity margin = measured.margin();
    Ratio whole = whole(measured);
    Ratio share =
        margin.value().signum() == 0 || whole.signum() == 0
            ? Ratio.of(Math.min(0, margin.value().signum()))
            : margin.value().over(whole);
    return new Quantity(share.times(Ratio.of(100)), Unit.PERCENT);
  }

  private static Ratio whole(Measured measured) {
    return measured.limit().dimension() == Dimension.TEMPERATURE
        ? DEGREES.differenceIn(measured.margin().unit()).value()
        : measured.limit().in(measured.margin().unit()).value().abs();
  }
}
