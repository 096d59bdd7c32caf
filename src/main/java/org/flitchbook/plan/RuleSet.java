package org.flitchbook.plan;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.flitchbook.measure.Quantity;

/**
 * One file of limits.
 *
 * @param limits by their ids, in the file's order
 * @param shortNames of the documents with long names, by these
 * @param notRead plain statements of what of this set was not read in its own text
 * @param exemptions the named cases in which a control is not needed
 * @param rindShare the share of a rind-on weight that counts as rind where it was not weighed
 */
public record RuleSet(
    String name,
    String title,
    Map<String, Limit> limits,
    Map<String, String> shortNames,
    List<String> notRead,
    List<Exemption> exemptions,
    Optional<RindShare> rindShare) {

  public RuleSet {
    shortNames = Map.copyOf(shortNames);
    notRead = List.copyOf(notRead);
    exemptions = List.copyOf(exemptions);
  }

  /** A handbook's share of rind, with its source. */
  public record RindShare(Quantity value, Source source) {}
}
