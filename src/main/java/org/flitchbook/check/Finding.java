package org.flitchbook.check;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.flitchbook.input.Place;
import org.flitchbook.message.Message;
import org.flitchbook.plan.Limit;

/**
 * What was found on one limit for one lot.
 *
 * @param measured empty where nothing could be measured
 * @param formulas the sum with its numbers put in, or the readings that were compared; one for each
 *     stage of a span
 * @param reasons why it is not met, not shown or pending
 * @param remarks what a person should know beside it: a near miss, what would have passed
 * @param evidence the places of the numbers
 * @param rows of the sheets, those that the judge used: what decides and what it looked at beside
 */
public record Finding(
    Limit limit,
    Verdict verdict,
    Optional<Measured> measured,
    List<Message> formulas,
    List<Message> reasons,
    List<Message> remarks,
    List<Place> evidence,
    List<Part> parts,
    Set<Place> rows) {

  public Finding {
    formulas = List.copyOf(formulas);
    reasons = List.copyOf(reasons);
    remarks = List.copyOf(remarks);
    evidence = List.copyOf(evidence);
    parts = List.copyOf(parts);
    rows = Set.copyOf(rows);
  }

  Finding remarked(Message more) {
    List<Message> all = Stream.concat(remarks.stream(), Stream.of(more)).toList();
    return new Finding(limit, verdict, measured, formulas, reasons, all, evidence, parts, rows);
  }
}
