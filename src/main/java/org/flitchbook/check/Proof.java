package org.flitchbook.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.flitchbook.measure.Quantity;
import org.flitchbook.plan.Conditions;
import org.flitchbook.plan.Figure;
import org.flitchbook.plan.Limit;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.What;

/** Whether the lot has proved the facts under which a limit applies. */
final class Proof {

  private final Case judged;

  Proof(Case judged) {
    this.judged = judged;
  }

  /** A limit whose condition the lot hasn't proved can be missed, but not met. */
  Outcome of(Limit limit, Outcome outcome) {
    List<String> unproved = unproved(limit.when());
    return unproved.isEmpty() || outcome.verdict() != Verdict.MET
        ? outcome
        : outcome.but(
            Verdict.NOT_SHOWN,
            judged.say(
                "check.proof.lacking",
                "it holds only with {0}, which the lot does not show",
                judged.plan().words().together(unproved)));
  }

  /** The facts that a limit asks for and the lot does not show. */
  List<String> unproved(Conditions when) {
    List<String> unproved = new ArrayList<>();
    if (!when.rinds().isEmpty() && !hasRind(when.rinds())) {
      unproved.add(
          judged.say("check.proof.rind", "rind {0}", judged.plan().words().either(when.rinds())));
    }
    when.nitriteAtLeast()
        .filter(wanted -> !has(Figure.INGOING_NITRITE, wanted))
        .ifPresent(
            wanted ->
                unproved.add(
                    judged.say("check.proof.nitrite", "ingoing nitrite of at least {0}", wanted)));
    when.acceleratorAtLeast()
        .filter(wanted -> !has(Figure.INGOING_ACCELERATOR, wanted))
        .ifPresent(
            wanted ->
                unproved.add(
                    judged.say("check.proof.accelerator", "accelerator of at least {0}", wanted)));
    when.thicknessAtMost()
        .filter(most -> !isThinEnough(most))
        .ifPresent(
            most ->
                unproved.add(
                    judged.say("check.proof.thickness", "a thickness of at most {0}", most)));
    return unproved;
  }

  /** Every piece was measured, and none is thicker. */
  private boolean isThinEnough(Quantity most) {
    List<Entry> measured = judged.lot().all(What.THICKNESS);
    boolean all =
        new Curing(judged)
            .pieces().stream()
                .allMatch(
                    piece ->
                        measured.stream()
                            .anyMatch(
                                entry -> entry.piece().isEmpty() || entry.piece().equals(piece)));
    return all && measured.stream().noneMatch(entry -> entry.amount().isAbove(most));
  }

  private boolean hasRind(List<String> wanted) {
    Optional<Entry> stated = judged.lot().last(What.RIND);
    return stated.filter(entry -> wanted.contains(entry.value())).isPresent();
  }

  private boolean has(Figure figure, Quantity wanted) {
    List<Curing.Ingoing> pieces = new Curing(judged).ingoing(figure);
    return pieces.stream()
        .allMatch(
            piece -> piece.worked().filter(worked -> !worked.value().isBelow(wanted)).isPresent());
  }
}
