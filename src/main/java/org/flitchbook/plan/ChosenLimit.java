package org.flitchbook.plan;

import static org.flitchbook.message.Message.say;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.flitchbook.json.Fields;
import org.flitchbook.json.Key;
import org.flitchbook.message.Message;

/**
 * A limit of a rule set that a product takes, or a group of which the best verdict counts.
 *
 * @param object in which a single limit may have other numbers, under the keys of its kind
 * @param support needed to loosen a limit, or to use one from memory
 */
record ChosenLimit(
    @Key(open = true) Fields object,
    @Key(inline = true) Ids ids,
    @Key(inline = true) Limit.Monitoring monitoring,
    Optional<String> support) {

  /** The numbers that a plan may change. */
  static final Set<String> NUMBERS =
      Set.of("atMost", "atLeast", "every", "allow", "stages", "rows");

  sealed interface Ids permits One, Group {
    List<String> named();
  }

  record One(String limit) implements Ids {
    @Override
    public List<String> named() {
      return List.of(limit);
    }
  }

  record Group(@Key(least = 1) List<String> anyOf) implements Ids {
    @Override
    public List<String> named() {
      return anyOf;
    }
  }

  List<Limit> in(Catalogue catalogue) {
    List<String> named = ids.named();
    if (ids instanceof Group) {
      named.stream().filter(catalogue::isPart).forEach(this::refusePart);
    }
    String group = named.size() > 1 ? String.join(" or ", named) : "";
    if (!group.isEmpty()) {
      NUMBERS.stream().sorted().filter(object::has).forEach(this::refuseNumber);
    }
    List<Limit> limits =
        named.stream()
            .flatMap(
                id -> catalogue.find(object, ids instanceof Group ? "anyOf" : "limit", id).stream())
            .map(limit -> changed(limit, group))
            .toList();
    object.end();
    return limits;
  }

  private void refusePart(String part) {
    Message expected = say("plan.part-by-itself", "it in an entry of its own");
    object.fault("anyOf", say("plan.part", "\"{0}\", a part of another limit", part), expected);
  }

  private void refuseNumber(String key) {
    Message found = say("plan.numbers-of-several", "other numbers for several limits");
    object.fault(key, found, say("plan.one-limit", "one limit in that entry"));
  }

  private Limit changed(Limit limit, String group) {
    Optional<String> named = support.filter(text -> !text.isBlank());
    Kind kind = group.isEmpty() ? Tightening.apply(limit.kind(), object) : limit.kind();
    if (named.isEmpty() && Tightening.isLooser(kind, limit.kind())) {
      object.fault(
          "support",
          say("plan.loosened", "{0} loosened without support", limit.id()),
          say(
              "plan.no-looser",
              "numbers no looser than {0}, or the \"support\" for it",
              limit.source().cited()));
    }
    if (named.isEmpty() && limit.source().standing() == Standing.MEMORY) {
      Message found =
          say("plan.from-memory", "{0}, a limit from memory, without support", limit.id());
      Message expected = say("plan.support-for-it", "the \"support\" that the plan has for it");
      object.fault("support", found, expected);
    }
    return limit.with(kind, named, monitoring, group);
  }
}
