package org.flitchbook.doubt;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.flitchbook.input.Fault;
import org.flitchbook.lot.ProbedPiece;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Quantity;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.What;

/**
 * A lot with a piece that is thicker than the one that a probe sat in: it warms and cools more
 * slowly, so that the probe shows nothing of it.
 */
final class UnprobedPiece implements Finder {

  @Override
  public String name() {
    return "thicker piece without a probe";
  }

  @Override
  public List<Fault> find(Rule rule, Subject subject) {
    List<Track> cores = subject.coreTracks();
    Optional<Quantity> thickest =
        subject.lot().all(What.THICKNESS).stream()
            .map(Entry::amount)
            .max(Comparator.naturalOrder());
    return cores.isEmpty()
        ? List.of()
        : thickest
            .filter(most -> cores.stream().noneMatch(core -> isInOneOf(core.piece(), most)))
            .map(most -> fault(rule, subject, cores, most))
            .stream()
            .toList();
  }

  private static boolean isInOneOf(ProbedPiece piece, Quantity thickest) {
    return piece.thickness().filter(known -> !known.isBelow(thickest)).isPresent();
  }

  /** Told of the probe whose piece is not known, if there is one, since that may settle it. */
  private static Fault fault(Rule rule, Subject subject, List<Track> cores, Quantity thickest) {
    Track core = cores.stream().filter(each -> !isKnown(each)).findFirst().orElse(cores.get(0));
    String probe = subject.plan().words().word("probe", core.called());
    String found =
        isKnown(core)
            ? subject.say(
                "doubt.piece.thicker",
                "a piece of {0} without a probe; {1} sat in one of {2}",
                thickest,
                probe,
                core.piece().thickness().orElseThrow())
            : subject.say(
                "doubt.piece.unknown",
                "nobody wrote in which piece {0} sat, or how thick that one was, and one is {1}"
                    + " thick",
                probe,
                thickest);
    return rule.fault(
        subject,
        core.origin(),
        found,
        subject.say("doubt.piece.expected", "a probe in the thickest piece"));
  }

  private static boolean isKnown(Track core) {
    return core.piece().isStated() && core.piece().thickness().isPresent();
  }
}
