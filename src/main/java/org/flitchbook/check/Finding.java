package org.flitchbook.check;

import java.util.List;
import java.util.Optional;
import org.flitchbook.input.Place;
import org.flitchbook.plan.Limit;

/**
 * What was found on one limit for one lot.
 *
 * @param measured empty where nothing could be measured
 * @param formula the sum with its numbers put in, or the readings that were compared
 * @param reason why it is not met, not shown or pending; empty where it is met without a remark
 * @param remark what a person should know beside it: a near miss, what would have passed
 * @param evidence where the numbers stand
 */
public record Finding(
    Limit limit,
    Verdict verdict,
    Optional<Measured> measured,
    String formula,
    String reason,
    String remark,
    List<Place> evidence,
    List<Part> parts) {

  public Finding {
    evidence = List.copyOf(evidence);
    parts = List.copyOf(parts);
  }

  /** With one more remark. */
  Finding remarked(String more) {
    String all = remark.isEmpty() ? more : remark + "; " + more;
    return new Finding(limit, verdict, measured, formula, reason, all, evidence, parts);
  }
}
