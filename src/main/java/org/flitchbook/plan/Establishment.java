package org.flitchbook.plan;

import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import org.flitchbook.json.Key;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Unit;

/**
 * Whose book it is.
 *
 * @param altitude above the sea, or below it
 * @param paper "Letter" or "A4"
 * @param temperature the unit in which the records speak
 * @param soleOperator whether one person makes and reviews
 * @param review who may review what has entries of a reviewer, see {@link #isReviewedByTwo}
 * @param signatures in which roles each record must be signed: "maker", "reviewer"; empty where
 *     none is asked for
 * @param timestampUrl the time stamp server that signatures are sent to (RFC 3161)
 */
public record Establishment(
    String name,
    @Key(otherwise = "") String number,
    String address,
    String regime,
    ZoneId zone,
    @Key(format = "height") Optional<Quantity> altitude,
    @Key(format = "paper", otherwise = "A4") String paper,
    Unit temperature,
    @Key(otherwise = ".") char decimalMark,
    @Key(optional = true) boolean soleOperator,
    @Key(format = "review", otherwise = Establishment.PREFERABLY_ANOTHER) String review,
    @Key(optional = true, format = "role") List<String> signatures,
    @Key(format = "address") Optional<String> timestampUrl) {

  /** As 9 CFR 417.5(c) has it: somebody who did not make the record, where that can be. */
  static final String PREFERABLY_ANOTHER = "preferably another";

  /** Nobody who has an entry in the record. */
  static final String ANOTHER = "another";

  /** Whether two may review who both have entries in a record, each for what the other wrote. */
  public boolean isReviewedByTwo() {
    return review.equals(PREFERABLY_ANOTHER) && !soleOperator;
  }
}
