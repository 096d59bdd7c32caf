package org.flitchbook.check;

import static org.flitchbook.message.Message.say;

import java.util.ArrayList;
import java.util.List;
import org.flitchbook.message.Message;
import org.flitchbook.plan.Plan;

/**
 * Two versions of a plan over one lot: of each limit the stricter finding counts, and says by which
 * version it was made.
 */
final class StricterFindings {

  private final Plan plan;
  private final Judgement now;

  /**
   * Compares with the plan of today.
   *
   * @param plan of today
   */
  StricterFindings(Plan plan, Judgement now) {
    this.plan = plan;
    this.now = now;
  }

  List<Finding> stricter(FormerJudgement former) {
    List<Finding> findings = new ArrayList<>();
    for (Finding finding : now.findings()) {
      findings.add(
          former
              .judgement()
              .on(finding.limit().id())
              .map(before -> stricter(finding, before, former))
              .orElse(finding));
    }
    former.judgement().findings().stream()
        .filter(before -> now.on(before.limit().id()).isEmpty())
        .map(before -> before.remarked(only(former)))
        .forEach(findings::add);
    return findings;
  }

  private Finding stricter(Finding finding, Finding before, FormerJudgement former) {
    if (before.verdict().isWorseThan(finding.verdict())) {
      return before.remarked(
          say(
              "check.version.former-stricter",
              "by plan version {0}, in force until {1}; version {2} gives {3}",
              former.version(),
              former.until(),
              plan.version(),
              finding.verdict()));
    }
    return before.limit().kind().equals(finding.limit().kind())
        ? finding
        : finding.remarked(
            say(
                "check.version.stricter-now",
                "by plan version {0}, the stricter here; version {1} gives {2}",
                plan.version(),
                former.version(),
                before.verdict()));
  }

  private static Message only(FormerJudgement former) {
    return say(
        "check.version.only-former",
        "by plan version {0}, in force until {1}; the plan of today has no such limit",
        former.version(),
        former.until());
  }
}
