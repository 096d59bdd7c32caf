package org.flitchbook.plan;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.flitchbook.json.Fields;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Quantity;
import org.flitchbook.sheet.Step;

/** Reads a product and settles which limits are in force for it. */
final class ProductReader {

  private final List<RuleSet> ruleSets;
  private final Classes classes;
  private final String regime;
  private final String planVersion;
  private final Set<String> confirmed;

  ProductReader(
      List<RuleSet> ruleSets,
      Classes classes,
      String regime,
      String planVersion,
      Set<String> confirmed) {
    this.ruleSets = ruleSets;
    this.classes = classes;
    this.regime = regime;
    this.planVersion = planVersion;
    this.confirmed = confirmed;
  }

  Optional<Product> read(Fields fields) {
    String code = fields.text("code");
    String name = fields.text("name");
    String productClass = known(fields, "class", classes.names());
    String cut = known(fields, "cut", classes.cuts());
    String cureMethod = known(fields, "cureMethod", classes.cureMethods());
    List<Step> steps = steps(fields);
    Optional<Quantity> between = Quantities.optional(fields, "between", Dimension.TIME);
    Optional<RuleSet.RindShare> rindShare = rindShare(fields);
    List<Limit> limits = new ArrayList<>();
    for (Fields each : fields.objects("limits")) {
      limits.addAll(named(each));
      each.end();
    }
    for (Fields each : fields.has("ownLimits") ? fields.objects("ownLimits") : List.<Fields>of()) {
      LimitReader.ofPlan(each, planVersion).ifPresent(limits::add);
    }
    Product product =
        new Product(
            code,
            name,
            productClass,
            cut,
            cureMethod,
            steps,
            between,
            settle(limits),
            missing(productClass, limits),
            rindShare);
    new Fitness(fields, product).check();
    return Optional.of(product);
  }

  private static String known(Fields fields, String key, List<String> words) {
    String word = fields.text(key);
    if (!words.isEmpty() && fields.has(key) && !words.contains(word)) {
      fields.fault(key, "\"" + word + "\"", String.join("; ", words));
    }
    return word;
  }

  private static List<Step> steps(Fields fields) {
    List<Step> steps = new ArrayList<>();
    for (String word : fields.texts("steps")) {
      Optional<Step> step = Step.parse(word).filter(known -> known != Step.RELEASE);
      if (step.isEmpty() || (!steps.isEmpty() && step.get().compareTo(last(steps)) <= 0)) {
        fields.fault("steps", "\"" + word + "\"", "cure, soak, dry, smoke, chill, in this order");
      }
      step.ifPresent(steps::add);
    }
    if (steps.isEmpty()) {
      fields.fault("steps", "no steps", "the steps that the product passes through");
    }
    return steps;
  }

  private static Step last(List<Step> steps) {
    return steps.get(steps.size() - 1);
  }

  private Optional<RuleSet.RindShare> rindShare(Fields fields) {
    Optional<RuleSet.RindShare> ofSets =
        ruleSets.stream().flatMap(set -> set.rindShare().stream()).findFirst();
    return fields
        .optionalObject("rindShare")
        .flatMap(
            own -> {
              Optional<Quantity> value = Quantities.required(own, "value", Dimension.SHARE);
              Source source =
                  new Source(own.text("support"), "", "plan version " + planVersion, Standing.PLAN);
              own.end();
              return value.map(share -> new RuleSet.RindShare(share, source));
            })
        .or(() -> ofSets);
  }

  /** The limits that one entry of the plan brings in: one, or a group of which the best counts. */
  private List<Limit> named(Fields entry) {
    Monitoring monitoring = LimitReader.monitoring(entry);
    Optional<String> support = entry.optionalText("support").filter(text -> !text.isBlank());
    List<String> ids = entry.has("anyOf") ? entry.texts("anyOf") : List.of(entry.text("limit"));
    String group = ids.size() > 1 ? String.join(" or ", ids) : "";
    List<Limit> limits = new ArrayList<>();
    for (String id : ids) {
      find(id, entry)
          .map(limit -> inPlan(limit, entry, support, monitoring, group))
          .ifPresent(limits::add);
    }
    return limits;
  }

  private Limit inPlan(
      Limit limit, Fields entry, Optional<String> support, Monitoring monitoring, String group) {
    Kind kind = Tightening.apply(limit.kind(), entry);
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

  private Optional<Limit> find(String id, Fields entry) {
    Optional<Limit> limit =
        ruleSets.stream()
            .flatMap(set -> Optional.ofNullable(set.limits().get(id)).stream())
            .findFirst();
    if (limit.isEmpty() && entry.has(entry.has("anyOf") ? "anyOf" : "limit")) {
      entry.fault(
          entry.has("anyOf") ? "anyOf" : "limit", "\"" + id + "\"", "a limit's id" + nearest(id));
    }
    return limit;
  }

  private String nearest(String id) {
    return ruleSets.stream()
        .flatMap(set -> set.limits().keySet().stream())
        .min((a, b) -> Integer.compare(Spelling.distance(a, id), Spelling.distance(b, id)))
        .map(best -> ", perhaps " + best)
        .orElse("");
  }

  /** A doubt is settled by the plan's confirmation of either limit, or by its own for the same. */
  private List<Limit> settle(List<Limit> limits) {
    Set<String> own = new HashSet<>();
    limits.stream()
        .filter(limit -> limit.source().standing() == Standing.PLAN)
        .forEach(limit -> own.add(limit.covers()));
    return limits.stream().map(limit -> isSettled(limit, own) ? limit.settled() : limit).toList();
  }

  private boolean isSettled(Limit limit, Set<String> own) {
    return confirmed.contains(limit.id())
        || limit.doubt().filter(confirmed::contains).isPresent()
        || own.contains(limit.covers())
        || limit.support().isPresent();
  }

  private List<Product.Missing> missing(String productClass, List<Limit> limits) {
    Set<String> covered = new HashSet<>();
    limits.forEach(limit -> covered.add(limit.covers()));
    return classes
        .find(productClass, regime)
        .map(
            found ->
                found.covers().stream()
                    .filter(covers -> !covered.contains(covers))
                    .map(covers -> new Product.Missing(covers, found.because(), found.source()))
                    .toList())
        .orElse(List.of());
  }
}
