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
                  "by plan version {0}, in force until {1}; version {2} gives {3}",
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
                    "by plan version {0}, the stricter here; version {1} gives {2}",
                    plan.version(),
                    former.version(),
                    verdict(before)));
  }

  private String verdict(Finding finding) {
    return plan.words().word("verdict", finding.verdict().words());
  }

  private String only(Former former) {
    return plan.words()
        .say(
            "check.version.only-former",
            "by plan version {0}, in force until {1}; the plan of today has no such limit",
            former.version(),
            former.until());
  }
}
