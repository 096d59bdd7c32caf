package org.flitchbook.closing;

import static org.flitchbook.message.Message.say;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.flitchbook.book.PlannedBook;
import org.flitchbook.change.Change;
import org.flitchbook.job.Session;
import org.flitchbook.job.UsageException;
import org.flitchbook.message.Message;
import org.flitchbook.plan.Plan;

/** Who closes, and why once more: from the command line, or from a person at the terminal. */
final class StatedReason {

  /** More changes are counted: the question must stay on the screen. */
  private static final int MOST = 20;

  private final Plan plan;
  private final Closing.Request request;
  private final Session session;

  StatedReason(Plan plan, Closing.Request request, Session session) {
    this.plan = plan;
    this.request = request;
    this.session = session;
    request.by().ifPresent(this::refuseStranger);
    request.reason().ifPresent(StatedReason::refuseControls);
  }

  private String refuseStranger(String initials) {
    return PlannedBook.person(plan, initials).initials();
  }

  private static String refuseControls(String reason) {
    if (reason.chars().anyMatch(Character::isISOControl)) {
      throw new UsageException(
          "closing.one-line", "a reason stands on one line, without control characters");
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

  /** Why records that were closed are made again; a person is asked where it isn't said. */
  String reason(int revision, List<Change> changes) {
    return Optional.of(reason())
        .filter(StatedReason::saysSomething)
        .or(
            () ->
                ask(list(revision, changes), say("closing.why", "Why did this change? "))
                    .map(StatedReason::refuseControls))
        .orElseThrow(() -> refused(revision, changes));
  }

  /** Who makes them again; a person is asked where it isn't said. */
  String by(int revision, List<Change> changes) {
    return request
        .by()
        .or(
            () ->
                ask(List.of(), say("closing.who", "Your initials, as in the plan: "))
                    .map(this::refuseStranger))
        .orElseThrow(() -> refused(revision, changes));
  }

  private Optional<String> ask(List<Message> before, Message question) {
    return session.ask(before, question).map(String::strip).filter(StatedReason::saysSomething);
  }

  private static boolean saysSomething(String text) {
    return text.codePoints().anyMatch(Character::isLetterOrDigit);
  }

  private static UsageException refused(int revision, List<Change> changes) {
    List<Message> lines = list(revision, changes);
    lines.add(
        say(
            "closing.unsaid",
            "Say why with --reason \"…\" and who you are with --as INITIALS; r{0} is kept as it is,"
                + " and nothing was written.",
            revision));
    return new UsageException(lines);
  }

  private static List<Message> list(int revision, List<Change> changes) {
    List<Message> lines = new ArrayList<>();
    lines.add(say("closing.changed", "this day was closed as r{0}, and since then:", revision));
    changes.stream().limit(MOST).forEach(change -> lines.add(Message.of("    " + change)));
    if (changes.size() > MOST) {
      lines.add(say("closing.more", "    and {0} more", changes.size() - MOST));
    }
    return lines;
  }
}
