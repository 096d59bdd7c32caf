package org.flitchbook.desk;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.flitchbook.change.Change;
import org.flitchbook.plan.Person;
import org.flitchbook.plan.Plan;

/** Who closes, and why once more: from the command line, or from a person at the terminal. */
final class Reasons {

  /** More changes are counted: the question must stay on the screen. */
  private static final int MOST = 20;

  private final Plan plan;
  private final Order order;
  private final Caller caller;

  Reasons(Plan plan, Order order, Caller caller) {
    this.plan = plan;
    this.order = order;
    this.caller = caller;
    order.by().ifPresent(this::refuseStranger);
    order.reason().ifPresent(Reasons::refuseControls);
  }

  private String refuseStranger(String initials) {
    if (plan.person(initials).isEmpty()) {
      String known = plan.people().stream().map(Person::initials).collect(Collectors.joining(", "));
      throw new Misuse("\"" + initials + "\" is nobody in the plan; it has " + known);
    }
    return initials;
  }

  private static String refuseControls(String reason) {
    if (reason.chars().anyMatch(Character::isISOControl)) {
      throw new Misuse("a reason stands on one line, without control characters");
    }
    return reason.strip();
  }

  /** As the command line says. */
  String by() {
    return order.by().orElse("");
  }

  /** As the command line says. */
  String reason() {
    return order.reason().orElse("").strip();
  }

  /** Why records that were closed are made anew; a person is asked where it isn't said. */
  String reason(int revision, List<Change> changes) {
    return Optional.of(reason())
        .filter(Reasons::saysSomething)
        .or(
            () ->
                ask(list(revision, changes) + "\nWhy did this change? ")
                    .map(Reasons::refuseControls))
        .orElseThrow(() -> refused(revision, changes));
  }

  /** Who makes them anew; a person is asked where it isn't said. */
  String by(int revision, List<Change> changes) {
    return order
        .by()
        .or(() -> ask("Your initials, as in the plan: ").map(this::refuseStranger))
        .orElseThrow(() -> refused(revision, changes));
  }

  private Optional<String> ask(String question) {
    return caller.ask().apply(question).map(String::strip).filter(Reasons::saysSomething);
  }

  private static boolean saysSomething(String text) {
    return text.codePoints().anyMatch(Character::isLetterOrDigit);
  }

  private static Misuse refused(int revision, List<Change> changes) {
    return new Misuse(
        list(revision, changes)
            + "\nSay why with --reason \"…\" and who you are with --as INITIALS; r"
            + revision
            + " is kept as it is, and nothing was written.");
  }

  private static String list(int revision, List<Change> changes) {
    String shown =
        changes.stream()
            .limit(MOST)
            .map(change -> "    " + change)
            .collect(Collectors.joining("\n"));
    String more = changes.size() > MOST ? "\n    and " + (changes.size() - MOST) + " more" : "";
    return "this day was closed as r" + revision + ", and since then:\n" + shown + more;
  }
}
