package org.flitchbook.check;

import static java.util.Comparator.naturalOrder;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BinaryOperator;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.lot.Lot;
import org.flitchbook.message.Message;
import org.flitchbook.plan.Rank;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.Sheet;

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
    Groups groups = new Groups(findings);
    Verdict worst =
        Verdict.worst(
            findings.stream()
                .filter(finding -> finding.limit().rank() == Rank.CRITICAL)
                .map(groups::counted));
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
    Groups groups = new Groups(findings);
    return findings.stream()
        .filter(finding -> finding.limit().rank() == rank)
        .filter(finding -> finding.verdict().isMissed())
        .filter(finding -> !groups.isServed(finding))
        .toList();
  }

  /** The rows of the sheets that a finding used, and those of the deviations that it opens. */
  public Set<Place> usedRows() {
    Stream<Place> actions =
        deviations().isEmpty()
            ? Stream.empty()
            : lot.entries().stream()
                .filter(entry -> entry.sheet() == Sheet.ACTIONS)
                .map(Entry::place);
    return Stream.concat(findings.stream().flatMap(found -> found.rows().stream()), actions)
        .map(place -> Place.of(place.file(), place.line()))
        .collect(Collectors.toUnmodifiableSet());
  }

  /** What left the house, to whom, and why it should not have; empty where nothing did. */
  public List<Message> left() {
    return findings.stream()
        .flatMap(finding -> finding.reasons().stream())
        .filter(Departure::isAbout)
        .toList();
  }

  /** Whether it may be released once it is reviewed. */
  public boolean isFree() {
    return verdict == Verdict.MET && deviations().isEmpty() && openFaults().isEmpty();
  }

  public List<Fault> openFaults() {
    return faults.stream().filter(Fault::isOpen).toList();
  }

  /**
   * Which verdict counts where a plan lets several limits stand for one control: the best of them.
   * A limit that comes in parts, X with X.start, is no better than the worst of its parts, and a
   * part counts wherever its whole does.
   */
  private static final class Groups {

    private final List<Finding> findings;
    private final Map<String, Verdict> counted = new HashMap<>();

    Groups(List<Finding> findings) {
      this.findings = findings;
      BinaryOperator<Verdict> better = BinaryOperator.maxBy(naturalOrder());
      findings.stream()
          .filter(finding -> whole(finding).equals(finding))
          .forEach(finding -> counted.merge(key(finding), withParts(finding), better));
    }

    /** The verdict that counts for this finding: that of its group, or of itself with its parts. */
    Verdict counted(Finding finding) {
      return counted.getOrDefault(key(whole(finding)), finding.verdict());
    }

    /** Whether another limit of its group has the better verdict, which counts. */
    boolean isServed(Finding finding) {
      boolean grouped = !whole(finding).limit().group().isEmpty();
      return grouped && finding.verdict().isWorseThan(counted(finding));
    }

    private static String key(Finding finding) {
      String group = finding.limit().group();
      return group.isEmpty() ? finding.limit().id() : group;
    }

    private Verdict withParts(Finding whole) {
      Stream<Finding> parts = findings.stream().filter(part -> isPart(part, whole));
      return Verdict.worst(Stream.concat(Stream.of(whole), parts).map(Finding::verdict));
    }

    /** What it is a part of; itself where it is none. */
    private Finding whole(Finding part) {
      return findings.stream().filter(whole -> isPart(part, whole)).findFirst().orElse(part);
    }

    private static boolean isPart(Finding part, Finding whole) {
      return part.limit().id().startsWith(whole.limit().id() + ".")
          && part.limit().rank() == whole.limit().rank();
    }
  }
}
