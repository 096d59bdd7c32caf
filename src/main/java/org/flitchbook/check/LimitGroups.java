package org.flitchbook.check;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Which verdict counts where a plan lets several limits stand for one control: the best of them. A
 * limit that comes in parts, X with X.start, is no better than the worst of its parts, and a part
 * counts wherever its whole does.
 */
final class LimitGroups {

  private final List<Finding> findings;
  private final Map<String, Verdict> counted = new HashMap<>();

  LimitGroups(List<Finding> findings) {
    this.findings = findings;
    for (Finding finding : findings) {
      if (whole(finding).isEmpty()) {
        counted.merge(key(finding), withParts(finding), LimitGroups::better);
      }
    }
  }

  /** The verdict that counts for this finding: that of its group, or of itself with its parts. */
  Verdict counted(Finding finding) {
    return counted.getOrDefault(key(whole(finding).orElse(finding)), finding.verdict());
  }

  /** Whether another limit of its group has the better verdict, which counts. */
  boolean isServed(Finding finding) {
    boolean grouped = !whole(finding).orElse(finding).limit().group().isEmpty();
    return grouped && finding.verdict().isWorseThan(counted(finding));
  }

  private static String key(Finding finding) {
    String group = finding.limit().group();
    return group.isEmpty() ? finding.limit().id() : group;
  }

  private Verdict withParts(Finding whole) {
    List<Verdict> verdicts = new ArrayList<>(List.of(whole.verdict()));
    findings.stream()
        .filter(part -> isPart(part, whole))
        .forEach(part -> verdicts.add(part.verdict()));
    return Verdict.worst(verdicts);
  }

  private Optional<Finding> whole(Finding part) {
    return findings.stream().filter(whole -> isPart(part, whole)).findFirst();
  }

  private static boolean isPart(Finding part, Finding whole) {
    return part.limit().id().startsWith(whole.limit().id() + ".")
        && part.limit().rank() == whole.limit().rank();
  }

  private static Verdict better(Verdict a, Verdict b) {
    return a.isWorseThan(b) ? b : a;
  }
}
