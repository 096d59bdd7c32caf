package org.flitchbook.plan;

import static org.flitchbook.message.Message.say;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.flitchbook.json.Fields;
import org.flitchbook.message.Message;

/** The limits and exemptions of all rule sets of a plan by their ids and names. */
record Catalogue(List<RuleSet> ruleSets) {

  Catalogue {
    ruleSets = List.copyOf(ruleSets);
  }

  Optional<Limit> find(String id) {
    return ruleSets.stream()
        .flatMap(set -> Optional.ofNullable(set.limits().get(id)).stream())
        .findFirst();
  }

  /** The limit that a plan names under a key; one that is not known is a fault. */
  Optional<Limit> find(Fields plan, String key, String id) {
    Optional<Limit> limit = find(id);
    // Where there is no limit at all, that is a fault of its own.
    if (limit.isEmpty() && plan.has(key) && ids().findAny().isPresent()) {
      Message wanted = say("plan.a-limit", "a limit's id, perhaps {0}", nearest(ids(), id));
      plan.fault(key, say("json.text", "\"{0}\"", id), wanted);
    }
    return limit;
  }

  Optional<RuleSet.Exemption> exemption(Fields plan, String name) {
    List<RuleSet.Exemption> known =
        ruleSets.stream().flatMap(set -> set.exemptions().stream()).toList();
    Optional<RuleSet.Exemption> found =
        known.stream().filter(each -> each.name().equals(name)).findFirst();
    if (found.isEmpty() && plan.has("name")) {
      Message wanted =
          known.isEmpty()
              ? say("plan.no-exemption", "an exemption of the rule sets, which list none")
              : say(
                  "plan.an-exemption",
                  "an exemption of the rule sets, perhaps {0}",
                  nearest(known.stream().map(RuleSet.Exemption::name), name));
      plan.fault("name", say("json.text", "\"{0}\"", name), wanted);
    }
    return found;
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

  /** The word that was probably meant. */
  private static String nearest(Stream<String> words, String word) {
    return words.min(Comparator.comparingInt(known -> distance(known, word))).orElse("");
  }

  /** The least number of letters to add, drop or change (Levenshtein 1965). */
  private static int distance(String a, String b) {
    int[] row = new int[b.length() + 1];
    for (int j = 0; j <= b.length(); j++) {
      row[j] = j;
    }
    for (int i = 1; i <= a.length(); i++) {
      int diagonal = row[0];
      row[0] = i;
      for (int j = 1; j <= b.length(); j++) {
        int above = row[j];
        int change = diagonal + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
        row[j] = Math.min(change, Math.min(above, row[j - 1]) + 1);
        diagonal = above;
      }
    }
    return row[b.length()];
  }
}
