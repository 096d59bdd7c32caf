package org.flitchbook.plan;

import static org.flitchbook.message.Message.say;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.flitchbook.input.Fault;
import org.flitchbook.message.Message;

/**
 * The versions of a book's plan, each in force from the day on which it was signed until the next
 * was. The last of them is the plan of today.
 *
 * @param plans in the order in which they were signed, at least one
 */
public record Succession(List<Plan> plans) {

  public Succession {
    plans = plans.stream().sorted(Comparator.comparing(Plan::signed)).toList();
    if (plans.isEmpty()) {
      throw new IllegalArgumentException("no plan");
    }
  }

  /**
   * Puts the versions in order.
   *
   * @param now the plan of today
   * @param former the plans that it replaced
   * @param faults a version that two plans bear, or a former plan signed no earlier than the next
   */
  public static Succession of(Plan now, List<Plan> former, List<Fault> faults) {
    List<Plan> all = new ArrayList<>(former);
    all.sort(Comparator.comparing(Plan::signed));
    all.add(now);
    Set<String> versions = new HashSet<>();
    for (int i = 0; i < all.size(); i++) {
      Plan plan = all.get(i);
      if (!versions.add(plan.version())) {
        broken(
            plan,
            say("plan.version-twice", "version {0} twice", plan.version()),
            say("plan.own-version", "a version of its own"),
            faults);
      }
      if (i > 0 && !all.get(i - 1).signed().isBefore(plan.signed())) {
        Plan before = all.get(i - 1);
        broken(
            before,
            say("plan.signed", "signed {0}", before.signed()),
            say(
                "plan.signed-before",
                "a day before version {0}, signed {1}",
                plan.version(),
                plan.signed()),
            faults);
      }
    }
    return new Succession(all);
  }

  private static void broken(Plan plan, Message found, Message expected, List<Fault> faults) {
    faults.add(Fault.broken("plan version", plan.place(), found, expected));
  }

  /** The plan of today. */
  public Plan now() {
    return plans.get(plans.size() - 1);
  }

  /** The plan in force at a time; before the first was signed, the first. */
  public Plan at(Instant time) {
    return plans.stream()
        .filter(plan -> !begin(plan).isAfter(time))
        .reduce((earlier, later) -> later)
        .orElse(plans.get(0));
  }

  /** The plans of before that were in force at some time since then. */
  public List<Plan> formerSince(Instant begin) {
    return plans.subList(plans.indexOf(at(begin)), plans.size() - 1);
  }

  /** The day on which the next version was signed; empty for the plan of today. */
  public Optional<LocalDate> until(Plan plan) {
    int next = plans.indexOf(plan) + 1;
    return next < plans.size() ? Optional.of(plans.get(next).signed()) : Optional.empty();
  }

  private static Instant begin(Plan plan) {
    return plan.signed().atStartOfDay(plan.establishment().zone()).toInstant();
  }
}
