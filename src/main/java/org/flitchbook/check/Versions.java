package org.flitchbook.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.flitchbook.plan.Plan;

/**
 * Two versions of a plan over one lot: of each limit the stricter finding counts, and says by which
 * version it was made.
 */
final class Versions {

  private final Plan plan;
  private final Judgement now;

  /**
   * Compares with the plan of today.
   *
   * @param plan of today
   */
  Versions(Plan plan, Judgement now) {
    this.plan = plan;
    this.now = now;
  }

  List<Finding> stricter(Former former) {
    List<Finding> findings = new ArrayList<>();
    for (Finding finding : now.findings()) {
      findings.add(
          of(former, finding.limit().id())
              .map(before -> stricter(finding, before, former))
              .orElse(finding));
    }
    former.judgement().findings().stream()
        .filter(before -> of(now, before.limit().id()).isEmpty())
        .map(before -> before.remarked(only(former)))
        .forEach(findings::add);
    return findings;
  }

  private static Optional<Finding> of(Former former, String limit) {
    return of(former.judgement(), limit);
  }

  private static Optional<Finding> of(Judgement judgement, String limit) {
    return judgement.findings().stream()
        .filter(finding -> finding.limit().id().equals(limit))
        .findFirst();
  }

  private Finding stricter(Finding finding, Finding before, Former former) {
    if (before.verdict().isWorseThan(finding.verdict())) {
      return before.remarked(
          plan.words()
              .say(
                  "check.version.former-stricter",
                  former.version(),
                  former.until(),
                  plan.version(),
                  verdict(finding)));
    }
    return before.limit().kind().equals(finding.limit().kind())
        ? finding
        : finding.remarked(
            plan.words()
                .say(
                    "check.version.stricter-now",
                    plan.version(),
                    former.version(),
                    verdict(before)));
  }

  private String verdict(Finding finding) {
    return plan.words().word("verdict", finding.verdict().words());
  }

  private String only(Former former) {
    return plan.words().say("check.version.only-former", former.version(), former.until());
  }
}
