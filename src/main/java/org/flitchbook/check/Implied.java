package org.flitchbook.check;

import java.util.Optional;
import org.flitchbook.measure.Quantity;
import org.flitchbook.plan.Conditions;
import org.flitchbook.plan.Kind;
import org.flitchbook.plan.Limit;
import org.flitchbook.plan.Limit.Monitoring;
import org.flitchbook.plan.Plan;
import org.flitchbook.plan.Product;
import org.flitchbook.plan.Rank;
import org.flitchbook.plan.RuleSet.Exemption;
import org.flitchbook.plan.Source;
import org.flitchbook.plan.Standing;
import org.flitchbook.sheet.Step;

/** The limits that a plan or a product's class implies without listing them. */
final class Implied {

  private static final Monitoring NONE = new Monitoring("", "", "", "");

  private Implied() {}

  /** Every planned step has its entries. */
  static Limit steps(Plan plan, Product product) {
    return limit(
        "plan.steps",
        "planned steps",
        plan.words().say("check.steps.name", "planned steps"),
        Step.RELEASE,
        new Kind.Sequence(product.steps()),
        plan.words().say("check.steps.because", "a step without entries shows nothing"),
        own(plan));
  }

  /** No more time between two steps than the product allows. */
  static Limit between(Plan plan, Product product, Quantity longest) {
    return limit(
        "plan.between",
        "time between steps",
        plan.words().say("check.between.name", "time between steps"),
        Step.RELEASE,
        new Kind.Between(longest),
        plan.words()
            .say(
                "check.between.because",
                "time between steps is not watched by any limit of a step"),
        own(plan));
  }

  /**
   * A lot that left was reviewed before (9 CFR 417.5(c)); implied once something was dispatched.
   */
  static Limit review(Plan plan, Kind.Presence reviewed) {
    return limit(
        "review.before-dispatch",
        "pre-shipment review",
        plan.words().say("check.review.name", "pre-shipment review"),
        Step.RELEASE,
        reviewed,
        plan.words()
            .say(
                "check.review.because",
                "the record is reviewed, signed and dated before the product leaves"),
        new Source(
            "9 CFR part 417", "section 5(c)", "text as read, a copy of about 2018", Standing.READ));
  }

  /** The plan covers what the class asks for. */
  static Limit covered(Plan plan, Product.Missing missing) {
    return limit(
        "class." + Checks.idOf(missing.covers()),
        missing.covers(),
        plan.words().word("covers", missing.covers()),
        Step.RELEASE,
        new Kind.Covered(missing.covers()),
        missing.because(),
        missing.source());
  }

  /** The plan names a case in which the control is not needed; it stands in every record. */
  static Limit exempt(Plan plan, Product.Exempt named) {
    Exemption exemption = named.exemption();
    return new Limit(
        "exempt." + Checks.idOf(exemption.covers()),
        plan.words()
            .say(
                "check.class.exempt-name",
                "{0}, exempt: {1}",
                plan.words().word("covers", exemption.covers()),
                plan.words().name(exemption.name())),
        exemption.covers(),
        Step.RELEASE,
        Rank.CRITICAL,
        new Kind.Exempted(exemption.name()),
        Conditions.NONE,
        exemption.because(),
        exemption.source(),
        Optional.of(named.support()),
        Optional.empty(),
        NONE,
        "");
  }

  private static Source own(Plan plan) {
    String document = plan.words().say("check.own.plan", "plan version {0}", plan.version());
    String edition = plan.words().say("check.own.signed", "signed {0}", plan.signed());
    return new Source(document, "", edition, Standing.PLAN);
  }

  private static Limit limit(
      String id, String covers, String name, Step step, Kind kind, String because, Source source) {
    return new Limit(
        id,
        name,
        covers,
        step,
        Rank.CRITICAL,
        kind,
        Conditions.NONE,
        because,
        source,
        Optional.empty(),
        Optional.empty(),
        NONE,
        "");
  }
}
