package org.flitchbook.plan;

import static org.flitchbook.message.Message.say;

import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.flitchbook.json.Fields;
import org.flitchbook.message.Listing;
import org.flitchbook.message.Message;
import org.flitchbook.sheet.Step;

/** Whether the limits of a product can apply to it at all. */
record Applicability(Fields object, Product product) {

  void check() {
    Set<String> ids = new HashSet<>();
    for (Limit limit : product.limits()) {
      if (!ids.add(limit.id())) {
        fault(say("json.twice", "{0} twice", limit.id()), say("json.once", "each once"));
      }
      check(limit);
    }
  }

  private void check(Limit limit) {
    Conditions when = limit.when();
    if (!when.fitsMethod(product.cureMethod())) {
      faultFact(limit, "cure method", product.cureMethod().word(), when.cureMethods());
    }
    checkFact(limit, "cut", product.cut(), when.cuts());
    checkFact(limit, "class", product.productClass(), when.classes());
    when.notNamed().filter(word -> isNamed(word, limit)).ifPresent(word -> named(limit, word));
    if (limit.step() != Step.RELEASE && !product.steps().contains(limit.step())) {
      fault(
          say(
              "plan.step-it-lacks",
              "{0} for the step {1}, which {2} has not",
              limit.id(),
              limit.step().word(),
              product.code()),
          say("plan.own-steps", "limits of the product's own steps"));
    }
  }

  private boolean isNamed(String word, Limit limit) {
    return limit.support().isEmpty()
        && product.name().toLowerCase(Locale.ROOT).contains(word.toLowerCase(Locale.ROOT));
  }

  private void named(Limit limit, String word) {
    fault(
        say("plan.named", "{0} on {1}, whose name says {2}", limit.id(), product.code(), word),
        say("plan.limit-for-name", "the limit for {0}, or the \"support\" for this one", word));
  }

  private void checkFact(Limit limit, String fact, String has, List<String> wanted) {
    if (!Conditions.allow(wanted, has)) {
      faultFact(limit, fact, has, wanted);
    }
  }

  private void faultFact(Limit limit, String fact, String has, List<?> wanted) {
    fault(
        say("plan.fact", "{0} on {1}, whose {2} is {3}", limit.id(), product.code(), fact, has),
        say("plan.fact-wanted", "{0} {1}", fact, Listing.or(wanted)));
  }

  private void fault(Message found, Message expected) {
    object.fault("limits", found, expected);
  }
}
