package org.flitchbook.check;

import java.util.Optional;
import org.flitchbook.lot.Lot;
import org.flitchbook.plan.Succession;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.What;
import org.flitchbook.words.Words;

/**
 * A person's word on which version of the plan counts for a lot that was made under several: an
 * entry "explained" whose item is {@value #CHANGED} and whose value is the version.
 */
public record PlanChoice(String version, Entry entry) {

  /** The rule that such an entry explains. */
  public static final String CHANGED = "plan changed";

  /** The rule may stand as the record prints it. */
  private static boolean isOfPlan(Entry entry, Words words) {
    return entry.item().equals(CHANGED) || entry.item().equals(words.word("rule", CHANGED));
  }

  /** The last such entry of a lot that names a version of the plan and a person of it. */
  public static Optional<PlanChoice> of(Lot lot, Succession versions) {
    return lot.all(What.EXPLAINED).stream()
        .filter(entry -> isOfPlan(entry, versions.now().words()))
        .filter(entry -> versions.now().person(entry.by()).isPresent())
        .filter(
            entry ->
                versions.plans().stream().anyMatch(plan -> plan.version().equals(entry.value())))
        .reduce((earlier, later) -> later)
        .map(entry -> new PlanChoice(entry.value(), entry));
  }
}
