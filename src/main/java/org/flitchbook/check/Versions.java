package org.flitchbook.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Two versions of a plan over one lot: of each limit the stricter finding counts, and says by which
 * version it was made.
 */
final class Versions {

  private final String version;
  private final Judgement now;

  /**
   * Compares with the plan of today.
   *
   * @param version of the plan of today
   */
  Versions(String version, Judgement now) {
    this.version = version;
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
          inForce(former) + "; version " + version + " gives " + finding.verdict().words());
    }
    return before.limit().kind().equals(finding.limit().kind())
        ? finding
        : finding.remarked(
            "by plan version "
                + version
                + ", the stricter here; version "
                + former.version()
                + " gives "
                + before.verdict().words());
  }

  private static String only(Former former) {
    return inForce(former) + "; the plan of today has no such limit";
  }

  private static String inForce(Former former) {
    return "by plan version " + former.version() + ", in force until " + former.until();
  }
}
