package org.flitchbook.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.flitchbook.json.Fields;

/**
 * One entry of a product's {@code limits}: a limit, or a group of which the best verdict counts.
 */
record Chosen(Catalogue catalogue, Fields entry) {

  private static final List<String> NUMBERS =
      List.of("atMost", "atLeast", "every", "allow", "stages", "rows");

  List<Limit> limits() {
    Monitoring monitoring = LimitReader.monitoring(entry);
    Optional<String> support = entry.optionalText("support").filter(text -> !text.isBlank());
    boolean several = entry.has("anyOf");
    List<String> ids = several ? entry.texts("anyOf") : List.of(entry.text("limit"));
    if (several) {
      checkGroup(ids);
    }
    String group = ids.size() > 1 ? String.join(" or ", ids) : "";
    List<Limit> limits = new ArrayList<>();
    for (String id : ids) {
      find(id).map(limit -> inPlan(limit, support, monitoring, group)).ifPresent(limits::add);
    }
    return limits;
  }

  private void checkGroup(List<String> ids) {
    if (ids.isEmpty()) {
      entry.fault("anyOf", "no ids", "the ids of limits of which the best counts");
    }
    for (String part : ids.stream().filter(catalogue::isPart).toList()) {
      entry.fault(
          "anyOf", "\"" + part + "\", a part of another limit", "it in an entry of its own");
    }
    for (String key : ids.size() > 1 ? NUMBERS : List.<String>of()) {
      if (entry.has(key)) {
        entry.fault(key, "other numbers for several limits", "one limit in that entry");
      }
    }
  }

  private Limit inPlan(Limit limit, Optional<String> support, Monitoring monitoring, String group) {
    Kind kind = group.isEmpty() ? Tightening.apply(limit.kind(), entry) : limit.kind();
    if (support.isEmpty() && Tightening.isLooser(kind, limit.kind())) {
      entry.fault(
          "support",
          limit.id() + " loosened without support",
          "numbers no looser than " + limit.source().cited() + ", or the \"support\" for it");
    }
    if (support.isEmpty() && limit.source().standing() == Standing.MEMORY) {
      entry.fault(
          "support",
          limit.id() + ", a limit from memory, without support",
          "the \"support\" that the plan has for it");
    }
    return limit.with(kind, support, monitoring, group);
  }

  private Optional<Limit> find(String id) {
    String key = entry.has("anyOf") ? "anyOf" : "limit";
    Optional<Limit> limit = catalogue.find(id);
    if (limit.isEmpty() && entry.has(key) && !catalogue.isEmpty()) {
      entry.fault(key, "\"" + id + "\"", "a limit's id" + catalogue.nearest(id));
    }
    return limit;
  }
}
