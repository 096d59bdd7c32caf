package org.flitchbook.check;

import static org.flitchbook.message.Message.say;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.flitchbook.measure.Quantity;
import org.flitchbook.message.Listing;
import org.flitchbook.message.Message;
import org.flitchbook.plan.Conditions;
import org.flitchbook.plan.Figure;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.What;

/** Whether the lot has proved the facts under which a limit applies. */
record Applicability(JudgedLot judged) {

  /** The facts that a limit asks for and the lot does not show. */
  List<Message> unproved(Conditions when) {
    List<Message> unproved = new ArrayList<>();
    if (!when.rinds().isEmpty() && !hasRind(when.rinds())) {
      unproved.add(say("check.proof.rind", "rind {0}", Listing.or(when.rinds())));
    }
    when.nitriteAtLeast()
        .filter(least -> !has(Figure.INGOING_NITRITE, least))
        .map(Quantity::asWritten)
        .map(least -> say("check.proof.nitrite", "ingoing nitrite of at least {0}", least))
        .ifPresent(unproved::add);
    when.acceleratorAtLeast()
        .filter(least -> !has(Figure.INGOING_ACCELERATOR, least))
        .map(Quantity::asWritten)
        .map(least -> say("check.proof.accelerator", "accelerator of at least {0}", least))
        .ifPresent(unproved::add);
    when.thicknessAtMost()
        .filter(most -> !isThinEnough(most))
        .map(Quantity::asWritten)
        .map(most -> say("check.proof.thickness", "a thickness of at most {0}", most))
        .ifPresent(unproved::add);
    return unproved;
  }

  /** Every piece was measured, and none is thicker. */
  private boolean isThinEnough(Quantity most) {
    Pieces pieces = new Pieces(judged);
    return pieces.names().stream().noneMatch(piece -> pieces.of(What.THICKNESS, piece).isEmpty())
        && judged.lot().all(What.THICKNESS).stream()
            .noneMatch(entry -> entry.amount().isAbove(most));
  }

  private boolean hasRind(List<String> wanted) {
    Optional<Entry> stated = judged.lot().last(What.RIND);
    return stated.filter(entry -> wanted.contains(entry.value())).isPresent();
  }

  private boolean has(Figure figure, Quantity wanted) {
    return Curing.ingoing(judged, figure, Optional.empty()).stream()
        .allMatch(
            piece -> piece.worked().filter(worked -> !worked.value().isBelow(wanted)).isPresent());
  }
}
