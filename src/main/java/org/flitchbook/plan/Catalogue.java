package org.flitchbook.plan;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/** The limits of all rule sets of a plan by their ids. */
record Catalogue(List<RuleSet> ruleSets) {

  Catalogue {
    ruleSets = List.copyOf(ruleSets);
  }

  /** Whether there is no limit at all, which is a fault of its own. */
  boolean isEmpty() {
    return ids().findAny().isEmpty();
  }

  Optional<Limit> find(String id) {
    return ruleSets.stream()
        .flatMap(set -> Optional.ofNullable(set.limits().get(id)).stream())
        .findFirst();
  }

  /** For a diagnostic: the id that was probably meant. */
  String nearest(String id) {
    return ids()
        .min(Comparator.comparingInt(known -> Spelling.distance(known, id)))
        .map(best -> ", perhaps " + best)
        .orElse("");
  }

  /** Whether it is a part such as {@code X.start} of a limit X, which shows nothing without X. */
  boolean isPart(String id) {
    return ids().anyMatch(whole -> id.startsWith(whole + "."));
  }

  /** Whether all that belongs together with that limit, X and each X.part, is among the chosen. */
  boolean isWhole(String id, Set<String> chosen) {
    return ids()
        .filter(other -> id.startsWith(other + ".") || other.startsWith(id + "."))
        .allMatch(chosen::contains);
  }

  private Stream<String> ids() {
    return ruleSets.stream().flatMap(set -> set.limits().keySet().stream());
  }
}
