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
import java.util.stream.Stream;
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
   * What is wrong with the versions: one that two plans bear, or a former plan signed no earlier
   * than the next.
   *
   * @param now the plan of today
   * @param former the plans that it replaced
   */
  public static List<Fault> faults(Plan now, List<Plan> former) {
    Stream<Plan> inOrder = former.stream().sorted(Comparator.comparing(Plan::signed));
    List<Plan> all = Stream.concat(inOrder, Stream.of(now)).toList();
    List<Fault> faults = new ArrayList<>();
    Set<String> versions = new HashSet<>();
    for (int i = 0; i < all.size(); i++) {
      Plan plan = all.get(i);
      if (!versions.add(plan.version())) {
        Message found = say("plan.version-twice", "version {0} twice", plan.version());
        faults.add(broken(plan, found, say("plan.own-version", "a version of its own")));
      }
      if (i > 0 && !all.get(i - 1).signed().isBefore(plan.signed())) {
        faults.add(tooLate(all.get(i - 1), plan));
      }
    }
    return faults;
  }

  private static Fault tooLate(Plan before, Plan plan) {
    return broken(
        before,
        say("plan.signed", "signed {0}", before.signed()),
        say(
            "plan.signed-before",
            "a day before version {0}, signed {1}",
            plan.version(),
            plan.signed()));
  }

  private static Fault broken(Plan plan, Message found, Message expected) {
    return Fault.broken("plan version", plan.place(), found, expected);
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
