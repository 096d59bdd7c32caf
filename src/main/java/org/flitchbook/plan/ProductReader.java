package org.flitchbook.plan;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import org.flitchbook.json.Fields;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Quantity;
import org.flitchbook.sheet.Step;

/** Reads a product and settles which limits are in force for it. */
final class ProductReader {

  /** Only so that the other keys of a product without a known method are looked at too. */
  private static final CureMethod ANY_METHOD = new CureMethod(List.of(CureMethod.Way.DRY));

  private final Catalogue catalogue;
  private final Classes classes;
  private final String regime;
  private final String edition;
  private final Wording wording;
  private final Set<String> confirmed;

  ProductReader(
      Catalogue catalogue,
      Classes classes,
      String regime,
      String version,
      Set<String> confirmed,
      Wording wording) {
    this.catalogue = catalogue;
    this.classes = classes;
    this.regime = regime;
    this.edition = wording.edition(version);
    this.wording = wording;
    this.confirmed = confirmed;
  }

  Optional<Product> read(Fields fields) {
    String code = fields.text("code");
    String name = fields.text("name");
    String productClass = known(fields, "class", classes.names());
    checkRegime(fields, productClass);
    String cut = known(fields, "cut", classes.cuts());
    Optional<CureMethod> stated = cureMethod(fields);
    CureMethod cureMethod = stated.orElse(ANY_METHOD);
    List<Step> steps = steps(fields);
    Optional<Quantity> between = Quantities.optional(fields, "between", Dimension.TIME);
    Optional<RuleSet.RindShare> rindShare = rindShare(fields);
    List<Limit> limits = new ArrayList<>();
    for (Fields each : Lists.objects(fields, "limits")) {
      limits.addAll(new Chosen(catalogue, each).limits());
      each.end();
    }
    for (Fields each : fields.objects("ownLimits")) {
      own(each).ifPresent(limits::add);
    }
    List<Product.Exempt> exemptions = Exemptions.of(catalogue).named(fields);
    Product product =
        new Product(
            code,
            name,
            productClass,
            cut,
            cureMethod,
            steps,
            between,
            settle(limits, other -> Fitness.fit(other.when(), cureMethod, cut, productClass)),
            exemptions,
            missing(productClass, limits, exemptions),
            Conflicts.in(limits, wording),
            rindShare);
    if (stated.isPresent()) {
      new Fitness(fields, product).check();
    }
    return stated.map(method -> product);
  }

  private static String known(Fields fields, String key, List<String> words) {
    String word = fields.text(key);
    if (!words.isEmpty() && fields.has(key) && !words.contains(word)) {
      fields.fault(key, "\"" + word + "\"", String.join("; ", words));
    }
    return word;
  }

  private Optional<CureMethod> cureMethod(Fields fields) {
    List<String> words = classes.cureMethods().stream().map(CureMethod::word).toList();
    return CureMethod.parse(known(fields, "cureMethod", words));
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
        catalogue.ruleSets().stream().flatMap(set -> set.rindShare().stream()).findFirst();
    return fields
        .optionalObject("rindShare")
        .flatMap(
            own -> {
              Optional<Quantity> value = RuleSetReader.rindValue(own);
              Source source = new Source(LimitReader.support(own), "", edition, Standing.PLAN);
              own.end();
              return value.map(share -> new RuleSet.RindShare(share, source));
            })
        .or(() -> ofSets);
  }

  private void checkRegime(Fields fields, String productClass) {
    if (classes.names().contains(productClass)
        && classes.regimes().contains(regime)
        && classes.find(productClass, regime).isEmpty()) {
      fields.fault(
          "class",
          "\"" + productClass + "\" under the regime \"" + regime + "\"",
          "a class that this regime has");
    }
  }

  /** A limit of the plan's own, which may not pass for one of a rule set. */
  private Optional<Limit> own(Fields fields) {
    Optional<Limit> limit = LimitReader.ofPlan(fields, edition);
    limit
        .filter(known -> catalogue.find(known.id()).isPresent())
        .ifPresent(
            known ->
                fields.fault("id", "\"" + known.id() + "\", a rule set's id", "an id of its own"));
    return limit;
  }

  /**
   * A doubt is settled by the plan's confirmation of either limit, or by its own for the same, and
   * is none where the limit that doubts can't apply to the product.
   */
  private List<Limit> settle(List<Limit> limits, Predicate<Limit> fits) {
    Set<String> own = new HashSet<>();
    limits.stream()
        .filter(limit -> limit.source().standing() == Standing.PLAN)
        .forEach(limit -> own.add(limit.covers()));
    return limits.stream()
        .map(limit -> isSettled(limit, own, fits) ? limit.settled() : limit)
        .toList();
  }

  private boolean isSettled(Limit limit, Set<String> own, Predicate<Limit> fits) {
    return confirmed.contains(limit.id())
        || limit.doubt().filter(confirmed::contains).isPresent()
        || limit.doubt().flatMap(catalogue::find).filter(fits.negate()).isPresent()
        || own.contains(limit.covers())
        || limit.support().isPresent();
  }

  private List<Product.Missing> missing(
      String productClass, List<Limit> limits, List<Product.Exempt> exemptions) {
    Set<String> covered = covered(limits);
    exemptions.forEach(each -> covered.add(each.exemption().covers()));
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

  /** Only a critical limit covers a control, and one that comes in parts only with all of them. */
  private Set<String> covered(List<Limit> limits) {
    Set<String> chosen = new HashSet<>();
    limits.forEach(limit -> chosen.add(limit.id()));
    Set<String> covered = new HashSet<>();
    limits.stream()
        .filter(limit -> limit.rank() == Rank.CRITICAL && catalogue.isWhole(limit.id(), chosen))
        .forEach(limit -> covered.add(limit.covers()));
    return covered;
  }
}
