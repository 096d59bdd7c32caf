package org.flitchbook.plan;

import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.flitchbook.json.Fields;
import org.flitchbook.sheet.Step;

/** Whether the limits of a product can apply to it at all. */
final class Fitness {

  private final Fields fields;
  private final Product product;

  Fitness(Fields fields, Product product) {
    this.fields = fields;
    this.product = product;
  }

  /** Whether a limit under these conditions could apply to such a product at all. */
  static boolean fit(Conditions when, CureMethod cureMethod, String cut, String productClass) {
    return isOf(cureMethod, when.cureMethods())
        && fits(when.cuts(), cut)
        && fits(when.classes(), productClass);
  }

  private static boolean isOf(CureMethod has, List<CureMethod> wanted) {
    return wanted.isEmpty() || wanted.stream().anyMatch(has::isUnderLimitsOf);
  }

  private static boolean fits(List<String> wanted, String has) {
    return wanted.isEmpty() || wanted.contains(has);
  }

  void check() {
    Set<String> ids = new HashSet<>();
    for (Limit limit : product.limits()) {
      if (!ids.add(limit.id())) {
        fields.fault("limits", limit.id() + " twice", "each limit once");
      }
      check(limit);
    }
  }

  private void check(Limit limit) {
    Conditions when = limit.when();
    if (!isOf(product.cureMethod(), when.cureMethods())) {
      List<String> methods = when.cureMethods().stream().map(CureMethod::word).toList();
      faultFact(limit, "cure method", product.cureMethod().word(), methods);
    }
    checkFact(limit, "cut", product.cut(), when.cuts());
    checkFact(limit, "class", product.productClass(), when.classes());
    when.notNamed().filter(word -> isNamed(word, limit)).ifPresent(word -> named(limit, word));
    if (limit.step() != Step.RELEASE && !product.steps().contains(limit.step())) {
      fields.fault(
          "limits",
          limit.id()
              + " for the step "
              + limit.step().word()
              + ", which "
              + product.code()
              + " has not",
          "limits of the product's own steps");
    }
  }

  private boolean isNamed(String word, Limit limit) {
    return limit.support().isEmpty()
        && product.name().toLowerCase(Locale.ROOT).contains(word.toLowerCase(Locale.ROOT));
  }

  private void named(Limit limit, String word) {
    fields.fault(
        "limits",
        limit.id() + " on " + product.code() + ", whose name says " + word,
        "the limit for " + word + ", or the \"support\" for this one");
  }

  private void checkFact(Limit limit, String fact, String has, List<String> wanted) {
    if (!fits(wanted, has)) {
      faultFact(limit, fact, has, wanted);
    }
  }

  private void faultFact(Limit limit, String fact, String has, List<String> wanted) {
    fields.fault(
        "limits",
        limit.id() + " on " + product.code() + ", whose " + fact + " is " + has,
        fact + " " + String.join(" or ", wanted));
  }
}
