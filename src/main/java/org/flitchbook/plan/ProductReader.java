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
    List<Limit> settled = settle(limits, written);
    List<Product.Exempt> exemptions = exemptions(written);
    Covering covering = covering(written, settled, exemptions);
    Product product =
        new Product(
            written.code(),
            written.name(),
            written.productClass(),
            written.cut(),
            written.method(),
            written.steps(),
            written.between(),
            settled,
            exemptions,
            covering.missing(),
            covering.open(),
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

  private Covering covering(
      ProductFile written, List<Limit> limits, List<Product.Exempt> exemptions) {
    return new Covering(
        catalogue,
        classes,
        classes.find(written.productClass(), regime).stream().toList(),
        limits,
        exemptions.stream().map(each -> each.exemption().covers()).collect(Collectors.toSet()));
  }
}
