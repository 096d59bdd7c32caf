package org.flitchbook.proving;

import static org.flitchbook.message.Message.say;
import static org.flitchbook.proving.Statement.Standing.BROKEN;
import static org.flitchbook.proving.Statement.Standing.DIFFERS;
import static org.flitchbook.proving.Statement.Standing.OPEN;
import static org.flitchbook.proving.Statement.Standing.PROVED;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.flitchbook.evidence.EnclosedEvidence;
import org.flitchbook.input.Fault;
import org.flitchbook.judging.Judged;
import org.flitchbook.message.Listing;
import org.flitchbook.message.Message;
import org.flitchbook.record.DayJudged;

/**
 * What comes out when a record is judged again from what it carries, and why it may differ: because
 * somebody changed the record, or because this version of the program judges otherwise than the one
 * that made it.
 *
 * @param madeBy the version that made it; empty where it states none
 * @param tool this version
 * @param day what was found again; empty where it can't be judged
 */
record JudgedAgain(
    String madeBy,
    String tool,
    List<Fault> faults,
    Optional<DayJudged> day,
    Optional<Comparison> comparison) {

  static JudgedAgain of(EnclosedEvidence enclosed, String tool) {
    String madeBy = enclosed.madeBy();
    Judged again = enclosed.judgedAgain(tool);
    boolean older = JudgingChange.isBefore(madeBy, tool);
    return new JudgedAgain(
        madeBy,
        tool,
        again.faults(),
        again.day(),
        again.day().map(judged -> Comparison.of(enclosed, judged, older)));
  }

  List<Statement> statements(List<JudgingChange> changes) {
    List<Statement> statements = new ArrayList<>();
    faults.forEach(fault -> statements.add(unreadable(fault.message())));
    comparison.ifPresent(
        found -> {
          found.differences().forEach(each -> statements.add(differs(each, changes)));
          if (!found.saidOtherwise().isEmpty()) {
            statements.add(saidOtherwise(Listing.commas(List.copyOf(found.saidOtherwise()))));
          }
          if (found.differences().isEmpty()) {
            statements.add(same(found.compared()));
          }
        });
    return statements;
  }

  private boolean isOfThisVersion() {
    return madeBy.equals(tool);
  }

  /** The version that made it, in words. */
  Object made() {
    return madeBy.isEmpty() ? say("proving.unknown-version", "unknown") : madeBy;
  }

  /** What this version can't read in a record of its own was changed. */
  private Statement unreadable(Message found) {
    return isOfThisVersion()
        ? new Statement(
            BROKEN, "proving.unreadable", "What it carries can't be judged again: {0}.", found)
        : new Statement(
            DIFFERS,
            "proving.unknown",
            "It was made by version {0} of the program, and carries something that version {1}"
                + " does not know: {2}. Prove it with version {0}.",
            made(),
            tool,
            found);
  }

  private Statement differs(Difference difference, List<JudgingChange> changes) {
    Message sentence = difference.sentence();
    if (isOfThisVersion()) {
      return new Statement(BROKEN, "proving.differs", "No longer follows: {0}.", sentence);
    }
    if (JudgingChange.isBefore(tool, madeBy)) {
      return new Statement(
          DIFFERS,
          "proving.newer",
          "Version {0} of the program made it, and version {1}, which is older, finds"
              + " otherwise: {2}. Prove it with version {0}.",
          made(),
          tool,
          sentence);
    }
    return changes.stream()
        .filter(change -> change.explains(difference, madeBy))
        .findFirst()
        .map(change -> judgedDifferently(sentence, change))
        .orElseGet(() -> unexplained(sentence));
  }

  private Statement unexplained(Message sentence) {
    return new Statement(
        BROKEN,
        "proving.differs-unexplained",
        "No longer follows: {0}. It was made by version {1} of the program, and no change of"
            + " judging since then explains it.",
        sentence,
        made());
  }

  private Statement judgedDifferently(Message sentence, JudgingChange change) {
    return new Statement(
        DIFFERS,
        "proving.judged-differently",
        "This version judges the same evidence differently: {0}. It was made by version {1}."
            + " What changed in version {2}: {3} This is no sign that somebody changed the record.",
        sentence,
        made(),
        change.since(),
        change.change());
  }

  /** Between two versions a sentence may change; within one it may not. */
  private Statement saidOtherwise(Listing about) {
    return isOfThisVersion()
        ? new Statement(
            BROKEN,
            "proving.said-otherwise",
            "The reasons that it gives no longer follow: {0}.",
            about)
        : new Statement(
            OPEN,
            "proving.said-otherwise-now",
            "Version {0} of the program gives its reasons in other words, or other reasons for"
                + " the same findings: {1}.",
            tool,
            about);
  }

  private Statement same(int compared) {
    return isOfThisVersion()
        ? new Statement(
            PROVED,
            "proving.same",
            "Judged again from what it carries, all {0} findings are the same.",
            compared)
        : new Statement(
            PROVED,
            "proving.same-since",
            "Judged again from what it carries, all {0} findings are the same. It was made by"
                + " version {1} of the program, and judged again by version {2}.",
            compared,
            made(),
            tool);
  }
}
