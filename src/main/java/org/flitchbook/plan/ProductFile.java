package org.flitchbook.plan;

import static org.flitchbook.message.Message.say;

import java.util.List;
import java.util.Optional;
import org.flitchbook.json.Fields;
import org.flitchbook.json.Key;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Quantity;
import org.flitchbook.message.Listing;
import org.flitchbook.message.Message;
import org.flitchbook.sheet.Step;

/**
 * A product as a plan writes it.
 *
 * @param between the longest time between two steps
 * @param rindShare in place of the rule set's share of rind
 * @param exemptions controls that this product does not need, by the names of the rule sets
 */
record ProductFile(
    Fields object,
    String code,
    String name,
    @Key(name = "class") String productClass,
    String cut,
    String cureMethod,
    @Key(format = "step", least = 1) List<Step> steps,
    @Key(dimension = Dimension.TIME) Optional<Quantity> between,
    Optional<OwnShare> rindShare,
    @Key(optional = true) List<Exempted> exemptions,
    List<ChosenLimit> limits,
    @Key(optional = true) List<OwnLimit> ownLimits) {

  /**
   * A share of rind.
   *
   * @param support what the share rests on
   */
  record OwnShare(
      @Key(format = "share of rind") Quantity value, @Key(format = "support") String support) {

    RuleSet.RindShare in(String edition) {
      return new RuleSet.RindShare(value, new Source(support, "", edition, Standing.PLAN));
    }
  }

  /**
   * A control that is not needed.
   *
   * @param support what shows that the case is this one
   */
  record Exempted(Fields object, String name, @Key(format = "support") String support) {

    void refuseSecond(String covers) {
      object.fault(
          "name",
          say("plan.second-exemption", "a second exemption for \"{0}\"", covers),
          say("json.once", "each once"));
    }
  }

  /**
   * A limit of the plan's own.
   *
   * @param support what the plan rests this limit on
   */
  record OwnLimit(
      Fields object,
      @Key(inline = true) Limit.Written limit,
      @Key(format = "support") String support,
      @Key(inline = true) Limit.Monitoring monitoring) {

    /** It may not pass for one of a rule set. */
    Limit in(String edition, Catalogue catalogue) {
      if (catalogue.find(limit.id()).isPresent()) {
        object.fault(
            "id",
            say("plan.id-of-a-set", "\"{0}\", a rule set's id", limit.id()),
            say("plan.own-id", "an id of its own"));
      }
      return limit.ofPlan(support, edition, monitoring);
    }
  }

  /** The method; of a word that is none, which is a fault, any. */
  CureMethod method() {
    return CureMethod.parse(cureMethod).orElse(CureMethod.ANY);
  }

  boolean fits(Conditions when) {
    return when.fit(method(), cut, productClass);
  }

  /** Puts to the faults what is wrong beside the limits. */
  void check(Classes classes, String regime) {
    known("class", productClass, classes.names());
    known("cut", cut, classes.facts().cuts());
    List<String> methods = classes.facts().cureMethods().stream().map(CureMethod::word).toList();
    known("cureMethod", cureMethod, methods);
    if (classes.names().contains(productClass)
        && classes.regimes().contains(regime)
        && classes.find(productClass, regime).isEmpty()) {
      object.fault(
          "class",
          say("plan.class-of-regime", "\"{0}\" under the regime \"{1}\"", productClass, regime),
          say("plan.class-it-has", "a class that this regime has"));
    }
    for (int i = 1; i < steps.size(); i++) {
      if (steps.get(i).compareTo(steps.get(i - 1)) <= 0) {
        object.fault(
            "steps", say("json.text", "\"{0}\"", steps.get(i).word()), PlanFormats.stepsInOrder());
      }
    }
  }

  private void known(String key, String word, List<String> words) {
    if (!words.isEmpty() && object.has(key) && !words.contains(word)) {
      object.fault(key, say("json.text", "\"{0}\"", word), Message.of(Listing.semicolons(words)));
    }
  }
}
