package org.flitchbook.proving;

import static org.flitchbook.message.Message.say;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.flitchbook.evidence.EnclosedEvidence;
import org.flitchbook.input.Fault;
import org.flitchbook.judging.Judged;
import org.flitchbook.message.Listing;
import org.flitchbook.message.Message;

/**
 * What comes out when a record is judged again from what it carries, and why it may differ: because
 * somebody changed the record, or because this version of the program judges otherwise than the one
 * that made it.
 *
 * @param name of the record's file
 * @param madeBy the version that made it; empty where it states none
 * @param tool this version
 */
record JudgedAgain(
    String name, String madeBy, String tool, List<Fault> faults, Optional<Comparison> comparison) {

  static JudgedAgain of(String name, EnclosedEvidence enclosed, String tool) {
    String madeBy = enclosed.madeBy();
    Judged again = enclosed.judgedAgain();
    boolean older = ProgramVersion.isBefore(madeBy, tool);
    return new JudgedAgain(
        name,
        madeBy,
        tool,
        again.faults(),
        again.day().map(judged -> Comparison.of(enclosed, judged, older)));
  }

  List<Statement> statements(List<JudgingChange> changes) {
    List<Statement> statements = new ArrayList<>();
    faults.forEach(fault -> statements.add(unreadable(fault)));
    comparison.ifPresent(
        found -> {
          found.differences().forEach(each -> statements.add(differs(each, changes)));
          if (!found.saidOtherwise().isEmpty()) {
            statements.add(saidOtherwise(found));
          }
          if (found.differences().isEmpty()) {
            statements.add(Statement.proved(name, same(found)));
          }
        });
    return statements;
  }

  private boolean isOfThisVersion() {
    return madeBy.equals(tool);
  }

  /** What this version can't read in a record of its own was changed. */
  private Statement unreadable(Fault fault) {
    Message found = fault.message();
    return isOfThisVersion()
        ? Statement.broken(
            name, say("proving.unreadable", "What it carries can't be judged again: {0}.", found))
        : Statement.differs(
            name,
            say(
                "proving.unknown",
                "It was made by version {0} of the program, and carries something that version {1}"
                    + " does not know: {2}. Prove it with version {0}.",
                made(),
                tool,
                found));
  }

  private Object made() {
    return madeBy.isEmpty() ? say("proving.unknown-version", "unknown") : madeBy;
  }

  private Statement differs(Comparison.Difference difference, List<JudgingChange> changes) {
    if (isOfThisVersion()) {
      return Statement.broken(
          name, say("proving.differs", "No longer follows: {0}.", sentence(difference)));
    }
    if (ProgramVersion.isBefore(tool, madeBy)) {
      return Statement.differs(
          name,
          say(
              "proving.newer",
              "Version {0} of the program made it, and version {1}, which is older, finds"
                  + " otherwise: {2}. Prove it with version {0}.",
              made(),
              tool,
              sentence(difference)));
    }
    return changes.stream()
        .filter(change -> change.explains(difference, madeBy))
        .findFirst()
        .map(change -> judgedDifferently(difference, change))
        .orElseGet(
            () ->
                Statement.broken(
                    name,
                    say(
                        "proving.differs-unexplained",
                        "No longer follows: {0}. It was made by version {1} of the program, and no"
                            + " change of judging since then explains it.",
                        sentence(difference),
                        made())));
  }

  private Statement judgedDifferently(Comparison.Difference difference, JudgingChange change) {
    return Statement.differs(
        name,
        say(
            "proving.judged-differently",
            "This version judges the same evidence differently: {0}. It was made by version {1}."
                + " What changed in version {2}: {3} This is no sign that somebody changed the"
                + " record.",
            sentence(difference),
            made(),
            change.since().toString(),
            change.change()));
  }

  private static Message sentence(Comparison.Difference difference) {
    Message where =
        difference.about().isEmpty()
            ? say("proving.of-lot", "lot {0}", difference.lot())
            : say("proving.of-limit", "lot {0}, {1}", difference.lot(), difference.about());
    return say(
        "proving.difference",
        "{0}: the record says {1}, and what it carries gives {2}",
        where,
        difference.printed(),
        difference.again());
  }

  /** Between two versions a sentence may change; within one it may not. */
  private Statement saidOtherwise(Comparison found) {
    Listing about = Listing.commas(List.copyOf(found.saidOtherwise()));
    return isOfThisVersion()
        ? Statement.broken(
            name,
            say(
                "proving.said-otherwise",
                "The reasons that it gives no longer follow: {0}.",
                about))
        : Statement.open(
            name,
            say(
                "proving.said-otherwise-now",
                "Version {0} of the program gives its reasons in other words, or other reasons for"
                    + " the same findings: {1}.",
                tool,
                about));
  }

  private Message same(Comparison found) {
    return isOfThisVersion()
        ? say(
            "proving.same",
            "Judged again from what it carries, all {0} findings are the same.",
            found.compared())
        : say(
            "proving.same-since",
            "Judged again from what it carries, all {0} findings are the same. It was made by"
                + " version {1} of the program, and judged again by version {2}.",
            found.compared(),
            made(),
            tool);
  }
}
