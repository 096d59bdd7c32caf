package org.flitchbook.check;

import java.util.Optional;
import org.flitchbook.measure.Quantity;
import org.flitchbook.message.Argument;
import org.flitchbook.sums.Formula;

/**
 * A value beside its limit.
 *
 * @param quantity what it is: "ingoing nitrite"
 * @param value the worst value, for a band's time the conservative one
 * @param atMost whether the limit is a ceiling
 * @param limit in the value's unit
 * @param interpolated the time with straight lines between readings, where the value is a time
 * @param uncertainty how far the true value may be off
 * @param charged whether the uncertainty counts against the lot
 * @param formula the sum that led to the value, where it was worked out
 */
public record Measured(
    Argument quantity,
    Quantity value,
    boolean atMost,
    Quantity limit,
    Optional<Quantity> interpolated,
    Optional<Quantity> uncertainty,
    boolean charged,
    Optional<Formula> formula) {

  static Measured of(Argument quantity, Quantity value, boolean atMost, Quantity limit) {
    return new Measured(
        quantity,
        value,
        atMost,
        limit.in(value.unit()),
        Optional.empty(),
        Optional.empty(),
        false,
        Optional.empty());
  }

  Measured interpolated(Optional<Quantity> time) {
    return new Measured(quantity, value, atMost, limit, time, uncertainty, charged, formula);
  }

  Measured by(Formula sum) {
    return new Measured(
        quantity, value, atMost, limit, interpolated, uncertainty, charged, Optional.of(sum));
  }

  Measured provable(Quantity half) {
    return within(half, false);
  }

  Measured less(Quantity half) {
    return within(half, true);
  }

  private Measured within(Quantity half, boolean counts) {
    return new Measured(
        quantity, value, atMost, limit, interpolated, Optional.of(half), counts, formula);
  }

  /** {@code <=} or {@code >=}. */
  public String bound() {
    return atMost ? "<=" : ">=";
  }

  /** Whether the value itself is on the wrong side of the limit, whatever the uncertainty. */
  public boolean isBeyond() {
    return atMost ? value.isAbove(limit) : value.isBelow(limit);
  }

  /** What is left to the limit, below 0 where it is missed. */
  public Quantity margin() {
    Quantity left = atMost ? limit.minus(value) : value.minus(limit);
    return uncertainty
        .filter(half -> charged)
        .map(half -> new Quantity(left.value().minus(half.value()), left.unit()))
        .orElse(left);
  }
}
