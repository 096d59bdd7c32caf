package org.flitchbook.check;

import java.util.List;
import java.util.Optional;
import org.flitchbook.input.Fault;
import org.flitchbook.lot.Lot;
import org.flitchbook.plan.Rank;

/**
 * What was found on one lot.
 *
 * @param verdict the worst of its critical findings; an open ask or stop turns met or pending into
 *     not shown
 * @param faults what is wrong with its data
 */
public record Judgement(Lot lot, Verdict verdict, List<Finding> findings, List<Fault> faults) {

  public Judgement {
    findings = List.copyOf(findings);
    faults = List.copyOf(faults);
  }

  static Judgement of(Lot lot, List<Finding> findings, List<Fault> faults) {
    LimitGroups groups = new LimitGroups(findings);
    Verdict worst =
        Verdict.worst(
            findings.stream()
                .filter(finding -> finding.limit().rank() == Rank.CRITICAL)
                .map(groups::counted)
                .toList());
    boolean open = faults.stream().anyMatch(Fault::isOpen);
    Verdict verdict = open && !worst.isMissed() ? Verdict.NOT_SHOWN : worst;
    return new Judgement(lot, verdict, findings, faults);
  }

  Optional<Finding> on(String limit) {
    return findings.stream().filter(finding -> finding.limit().id().equals(limit)).findFirst();
  }

  /** The critical findings that are not met or not shown; each opens a deviation. */
  public List<Finding> deviations() {
    return missed(Rank.CRITICAL);
  }

  /** The operating findings that are not met or not shown. */
  public List<Finding> operatingMisses() {
    return missed(Rank.OPERATING);
  }

  private List<Finding> missed(Rank rank) {
    LimitGroups groups = new LimitGroups(findings);
    return findings.stream()
        .filter(finding -> finding.limit().rank() == rank)
        .filter(finding -> finding.verdict().isMissed())
        .filter(finding -> !groups.isServed(finding))
        .toList();
  }

  public List<Fault> openFaults() {
    return faults.stream().filter(Fault::isOpen).toList();
  }
}
