package org.flitchbook.check;

import static org.flitchbook.message.Message.say;

import java.util.Locale;
import java.util.Optional;
import org.flitchbook.measure.Quantity;
import org.flitchbook.message.Argument;
import org.flitchbook.message.Message;
import org.flitchbook.message.Word;
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
        say("check.steps.name", "planned steps"),
        new Kind.Sequence(product.steps()),
        say("check.steps.because", "a step without entries shows nothing"),
        own(plan),
        Optional.empty());
  }

  /** No more time between two steps than the product allows. */
  static Limit between(Plan plan, Quantity longest) {
    return limit(
        "plan.between",
        "time between steps",
        say("check.between.name", "time between steps"),
        new Kind.Between(longest),
        say("check.between.because", "time between steps is not watched by any limit of a step"),
        own(plan),
        Optional.empty());
  }

  /**
   * A lot that left was reviewed before (9 CFR 417.5(c)); implied once something was dispatched.
   */
  static Limit review(Kind.Presence reviewed) {
    return limit(
        "review.before-dispatch",
        "pre-shipment review",
        say("check.review.name", "pre-shipment review"),
        reviewed,
        say(
            "check.review.because",
            "the record is reviewed, signed and dated before the product leaves"),
        new Source(
            "9 CFR part 417", "section 5(c)", "text as read, a copy of about 2018", Standing.READ),
        Optional.empty());
  }

  /** The plan covers what the class asks for. */
  static Limit covered(Product.Missing missing) {
    return limit(
        "class." + idOf(missing.covers()),
        missing.covers(),
        new Word("covers", missing.covers()),
        new Kind.Covered(missing.covers()),
        Message.of(missing.because()),
        missing.source(),
        Optional.empty());
  }

  /** The plan names a case in which the control is not needed; it stands in every record. */
  static Limit exempt(Product.Exempt named) {
    Exemption exemption = named.exemption();
    return limit(
        "exempt." + idOf(exemption.covers()),
        exemption.covers(),
        say(
            "check.class.exempt-name",
            "{0}, exempt: {1}",
            new Word("covers", exemption.covers()),
            new Word("name", exemption.name())),
        new Kind.Exempted(exemption.name()),
        Message.of(exemption.because()),
        exemption.source(),
        Optional.of(named.support()));
  }

  private static String idOf(String covers) {
    return covers.toLowerCase(Locale.ROOT).replace(' ', '-');
  }

  private static Source own(Plan plan) {
    Message document = say("check.own.plan", "plan version {0}", plan.version());
    Message edition = say("check.own.signed", "signed {0}", plan.signed());
    return new Source(document.in(plan.words()), "", edition.in(plan.words()), Standing.PLAN);
  }

  private static Limit limit(
      String id,
      String covers,
      Argument name,
      Kind kind,
      Message because,
      Source source,
      Optional<String> support) {
    return new Limit(
        id,
        name,
        covers,
        Step.RELEASE,
        Rank.CRITICAL,
        kind,
        Conditions.NONE,
        because,
        source,
        support,
        Optional.empty(),
        NONE,
        "");
  }
}
