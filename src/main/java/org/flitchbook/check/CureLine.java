package org.flitchbook.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.flitchbook.measure.Quantity;
import org.flitchbook.plan.Kind;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.What;
import org.flitchbook.sums.Formula;

/** The sums of the cure of one lot, line by line. */
public sealed interface CureLine {

  /** What was weighed for them. */
  record Weighed(Entry entry) implements CureLine {}

  /**
   * One limit's sum; of a lot in pieces that of the worst piece.
   *
   * @param finding of a limit on a figure that is summed from the weighings of the cure
   * @param measured the result beside its limit
   */
  record Summed(Finding finding, Measured measured, Formula formula) implements CureLine {}

  /** What the scales can prove of any of these sums, with k = 2 after the GUM. */
  record Provable(Quantity half) implements CureLine {}

  /** The lines of one lot in order; what its scales can prove comes once, since all share it. */
  static List<CureLine> of(Judgement judgement) {
    List<CureLine> lines = new ArrayList<>();
    Stream.of(What.GREEN_WEIGHT, What.RIND_WEIGHT, What.CURING_SALT)
        .flatMap(what -> judgement.lot().all(what).stream())
        .forEach(entry -> lines.add(new Weighed(entry)));
    List<Finding> ofCure = judgement.findings().stream().filter(CureLine::isOfCure).toList();
    ofCure.forEach(finding -> summed(finding).ifPresent(lines::add));
    ofCure.stream()
        .flatMap(finding -> finding.measured().flatMap(Measured::uncertainty).stream())
        .findFirst()
        .ifPresent(half -> lines.add(new Provable(half)));
    return lines;
  }

  /** Whether it is on a figure that is summed from the weighings of the cure. */
  static boolean isOfCure(Finding finding) {
    return finding.limit().kind() instanceof Kind.Bound bound && bound.figure().isIngoing();
  }

  private static Optional<CureLine> summed(Finding finding) {
    return finding
        .measured()
        .flatMap(measured -> measured.formula().map(sum -> new Summed(finding, measured, sum)));
  }
}
