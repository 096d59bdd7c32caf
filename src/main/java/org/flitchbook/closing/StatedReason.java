package org.flitchbook.closing;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.flitchbook.book.PlanVersions;
import org.flitchbook.change.Change;
import org.flitchbook.job.Session;
import org.flitchbook.job.UsageException;
import org.flitchbook.plan.Plan;

/** Who closes, and why once more: from the command line, or from a person at the terminal. */
final class StatedReason {

  /** More changes are counted: the question must stay on the screen. */
  private static final int MOST = 20;

  private final Plan plan;
  private final CloseRequest request;
  private final Session session;

  StatedReason(Plan plan, CloseRequest request, Session session) {
    this.plan = plan;
    this.request = request;
    this.session = session;
    request.by().ifPresent(this::refuseStranger);
    request.reason().ifPresent(StatedReason::refuseControls);
  }

  private String refuseStranger(String initials) {
    return PlanVersions.person(plan, initials).initials();
  }

  private static String refuseControls(String reason) {
    if (reason.chars().anyMatch(Character::isISOControl)) {
      throw new UsageException("a reason stands on one line, without control characters");
    }
    return reason.strip();
  }

  /** As the command line says. */
  String by() {
    return request.by().orElse("");
  }

  /** As the command line says. */
  String reason() {
    return request.reason().orElse("").strip();
  }

  /** Why records that were closed are made anew; a person is asked where it isn't said. */
  String reason(int revision, List<Change> changes) {
    return Optional.of(reason())
        .filter(StatedReason::saysSomething)
        .or(
            () ->
                ask(list(revision, changes) + "\nWhy did this change? ")
                    .map(StatedReason::refuseControls))
        .orElseThrow(() -> refused(revision, changes));
  }

  /** Who makes them anew; a person is asked where it isn't said. */
  String by(int revision, List<Change> changes) {
    return request
        .by()
        .or(() -> ask("Your initials, as in the plan: ").map(this::refuseStranger))
        .orElseThrow(() -> refused(revision, changes));
  }

  private Optional<String> ask(String question) {
    return session.ask(question).map(String::strip).filter(StatedReason::saysSomething);
  }

  private static boolean saysSomething(String text) {
    return text.codePoints().anyMatch(Character::isLetterOrDigit);
  }

  private static UsageException refused(int revision, List<Change> changes) {
    return new UsageException(
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
