package org.flitchbook.plan;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Settles which limits are in force for a product.
 *
 * @param edition of the plan, as the source of what it states itself
 * @param confirmed the limits that the plan confirms
 */
record ProductReader(
    Catalogue catalogue, Classes classes, String regime, String edition, Set<String> confirmed) {

  Product read(ProductFile written) {
    written.check(classes, regime);
    List<Limit> limits = new ArrayList<>();
    written.limits().forEach(each -> limits.addAll(each.in(catalogue)));
    written.ownLimits().forEach(each -> limits.add(each.in(edition, catalogue)));
    List<Product.Exempt> exemptions = exemptions(written);
    Product product =
        new Product(
            written.code(),
            written.name(),
            written.productClass(),
            written.cut(),
            written.method(),
            written.steps(),
            written.between(),
            settle(limits, written),
            exemptions,
            missing(written.productClass(), limits, exemptions),
            ProductLimits.conflicts(limits),
            rindShare(written));
    new ProductLimits(written.object(), product).check();
    return product;
  }

  private Optional<RuleSet.RindShare> rindShare(ProductFile written) {
    return written
        .rindShare()
        .map(own -> own.in(edition))
        .or(
            () ->
                catalogue.ruleSets().stream().flatMap(set -> set.rindShare().stream()).findFirst());
  }

  /** Each with its support; no two may stand for one control. */
  private List<Product.Exempt> exemptions(ProductFile written) {
    List<Product.Exempt> exemptions = new ArrayList<>();
    Set<String> covered = new HashSet<>();
    for (ProductFile.Exempted each : written.exemptions()) {
      Optional<RuleSet.Exemption> found = catalogue.exemption(each.object(), each.name());
      found.ifPresent(known -> exemptions.add(new Product.Exempt(known, each.support())));
      found
          .map(RuleSet.Exemption::covers)
          .filter(covers -> !covered.add(covers))
          .ifPresent(each::refuseSecond);
    }
    return List.copyOf(exemptions);
  }

  /**
   * A doubt is settled by the plan's confirmation of either limit, or by its own for the same, and
   * is none where the limit that doubts can't apply to the product.
   */
  private List<Limit> settle(List<Limit> limits, ProductFile product) {
    Set<String> own =
        limits.stream()
            .filter(limit -> limit.source().standing() == Standing.PLAN)
            .map(Limit::covers)
            .collect(Collectors.toSet());
    return limits.stream()
        .map(limit -> isSettled(limit, own, product) ? limit.settled() : limit)
        .toList();
  }

  private boolean isSettled(Limit limit, Set<String> own, ProductFile product) {
    Optional<Conditions> doubting = limit.doubt().flatMap(catalogue::find).map(Limit::when);
    return confirmed.contains(limit.id())
        || limit.doubt().filter(confirmed::contains).isPresent()
        || doubting.filter(when -> !product.fits(when)).isPresent()
        || own.contains(limit.covers())
        || limit.support().isPresent();
  }

  private List<Product.Missing> missing(
      String productClass, List<Limit> limits, List<Product.Exempt> exemptions) {
    Set<String> covered = covered(limits);
    exemptions.forEach(each -> covered.add(each.exemption().covers()));
    return classes.find(productClass, regime).stream()
        .flatMap(
            found ->
                found.covers().stream()
                    .filter(covers -> !covered.contains(covers))
                    .map(covers -> new Product.Missing(covers, found.because(), found.source())))
        .toList();
  }

  /** Only a critical limit covers a control, and one that comes in parts only with all of them. */
  private Set<String> covered(List<Limit> limits) {
    Set<String> chosen = limits.stream().map(Limit::id).collect(Collectors.toSet());
    return limits.stream()
        .filter(limit -> limit.rank() == Rank.CRITICAL && catalogue.isWhole(limit.id(), chosen))
        .map(Limit::covers)
        .collect(Collectors.toCollection(HashSet::new));
  }
}
