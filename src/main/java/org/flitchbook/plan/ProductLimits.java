package org.flitchbook.plan;

import static org.flitchbook.message.Message.say;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.flitchbook.json.Fields;
import org.flitchbook.measure.Quantity;
import org.flitchbook.message.Listing;
import org.flitchbook.message.Message;
import org.flitchbook.sheet.Step;

/** What is unsound in the limits of a product: that they can't apply to it, or not together. */
record ProductLimits(Fields object, Product product) {

  /** Puts to the faults which limits can't apply to the product at all. */
  void check() {
    Set<String> ids = new HashSet<>();
    for (Limit limit : product.limits()) {
      if (!ids.add(limit.id())) {
        fault(say("json.twice", "{0} twice", limit.id()), say("json.once", "each once"));
      }
      check(limit, limit.when());
    }
  }

  private void check(Limit limit, Conditions when) {
    CureMethod method = product.cureMethod();
    checkFact(limit, "cure method", method.word(), when.fitsMethod(method), when.cureMethods());
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
    checkFact(limit, fact, has, Conditions.allow(wanted, has), wanted);
  }

  private void checkFact(Limit limit, String fact, String has, boolean fits, List<?> wanted) {
    if (!fits) {
      fault(
          say("plan.fact", "{0} on {1}, whose {2} is {3}", limit.id(), product.code(), fact, has),
          say("plan.fact-wanted", "{0} {1}", fact, Listing.or(wanted)));
    }
  }

  private void fault(Message found, Message expected) {
    object.fault("limits", found, expected);
  }

  /** Each conflict in one sentence. Limits of one group need not be met together. */
  static List<Message> conflicts(List<Limit> limits) {
    List<Message> sentences = new ArrayList<>();
    for (Limit ceiling : limits) {
      if (ceiling.kind() instanceof Kind.Ceiling bound) {
        limits.stream()
            .filter(other -> ceiling.group().isEmpty() || !ceiling.group().equals(other.group()))
            .forEach(
                other ->
                    wanted(other, bound.figure())
                        .flatMap(least -> sentence(ceiling, bound.limit(), other, least))
                        .ifPresent(sentences::add));
      }
    }
    return List.copyOf(sentences);
  }

  /** The least of a figure that a limit asks for, as its number or as its condition. */
  private static Optional<Quantity> wanted(Limit limit, Figure figure) {
    if (limit.kind() instanceof Kind.Floor bound && bound.figure() == figure) {
      return Optional.of(bound.limit());
    }
    return switch (figure) {
      case INGOING_NITRITE -> limit.when().nitriteAtLeast();
      case INGOING_ACCELERATOR -> limit.when().acceleratorAtLeast();
      default -> Optional.empty();
    };
  }

  private static Optional<Message> sentence(
      Limit ceiling, Quantity most, Limit other, Quantity least) {
    int order = least.compareTo(most);
    if (order < 0) {
      return Optional.empty();
    }
    Object[] said = {other.id(), least, ceiling.id(), most};
    return Optional.of(
        order > 0
            ? say(
                "planned.both-impossible",
                "{0} asks for at least {1}, {2} allows at most {3}: both can't be met",
                said)
            : say(
                "planned.both-exactly",
                "{0} asks for at least {1}, {2} allows at most {3}: only exactly {3} meets both",
                said));
  }
}
