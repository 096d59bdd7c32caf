package org.flitchbook.check;

import static org.flitchbook.message.Message.say;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.message.Listing;
import org.flitchbook.message.Message;
import org.flitchbook.plan.Figure;
import org.flitchbook.plan.Kind;
import org.flitchbook.plan.Limit;
import org.flitchbook.plan.Standing;
import org.flitchbook.sheet.What;
import org.flitchbook.sums.Lethality;
import org.flitchbook.sums.Lethality.Credit;
import org.flitchbook.sums.Lethality.Resistance;
import org.flitchbook.sums.Shift;
import org.flitchbook.sums.Sums;

/**
 * What a person should know beside a verdict. A remark changes no verdict.
 *
 * @param judge judges a limit of a rule set that the plan does not use
 */
record Remarks(JudgedLot judged, Function<Limit, Outcome> judge) {

  List<Message> on(Limit limit, Outcome outcome) {
    Stream<Message> remarks =
        Stream.of(
                guardBand(outcome),
                nearMiss(limit, outcome),
                integrated(limit),
                rindShare(limit),
                exempt(limit, outcome))
            .flatMap(Optional::stream);
    return Stream.concat(
            remarks, outcome.verdict().isMissed() ? wouldHavePassed(limit) : Stream.of())
        .toList();
  }

  /** The legal limit is judged on the weights as written, whatever the scales can prove. */
  private static Optional<Message> guardBand(Outcome outcome) {
    return outcome
        .measured()
        .filter(measured -> !measured.charged())
        .flatMap(
            measured ->
                measured
                    .uncertainty()
                    .filter(half -> Sums.inGuardBand(measured.value(), half, measured.limit())))
        .map(
            half ->
                say(
                    "check.remark.guard-band",
                    "inside the guard band of ± {0}: these scales can't prove on which side of the"
                        + " limit it is",
                    half));
  }

  /** The heat added up for the coldest probe: support beside the table, never in its place. */
  private Optional<Message> integrated(Limit limit) {
    List<Track> tracks = judged.heated(What.INTERNAL_TEMPERATURE);
    if (!(limit.kind() instanceof Kind.TimeAtTemperature table)
        || table.integral().isEmpty()
        || tracks.isEmpty()) {
      return Optional.empty();
    }
    Kind.Integral integral = table.integral().get();
    Resistance resistance = new Resistance(integral.reference(), integral.d(), integral.z());
    Quantity lowest =
        table.rows().stream().map(Kind.Hold::atLeast).min(Comparator.naturalOrder()).orElseThrow();
    Credit credit = new Credit(lowest, true, integral.logs().value().rounded(1));
    return tracks.stream()
        .map(track -> Lethality.of(track, Shift.DOWN, resistance, credit))
        .min(Comparator.comparing(Lethality::logs))
        .map(
            heat ->
                say(
                    "check.remark.integral",
                    "the heat added up while it rose gives {0}, as support beside the table and"
                        + " never in its place",
                    heat.isCapped()
                        ? say("words.at-least", "at least {0}", heat.shown())
                        : heat.shown()));
  }

  /** A sum on an estimated skin-free weight says whose estimate it is. */
  private Optional<Message> rindShare(Limit limit) {
    boolean onMeat =
        limit.kind() instanceof Kind.Bound bound
            && (bound.figure().isIngoing() || bound.figure() == Figure.YIELD);
    return judged
        .product()
        .rindShare()
        .filter(share -> onMeat && new Pieces(judged).isRindEstimated())
        .map(
            share ->
                say(
                    "check.remark.rind-share",
                    "the rind was not weighed, so {0} of the weight counts as rind by {1}, {2}",
                    share.value().asWritten(),
                    judged.plan().cited(share.source()),
                    share.source().standing().meaning()));
  }

  /** Beside a limit that a reading meets, an exemption must not pass for one. */
  private static Optional<Message> exempt(Limit limit, Outcome outcome) {
    Message by =
        say(
            "check.remark.exempt",
            "met by no reading, but {0}",
            Listing.semicolons(outcome.reasons()));
    return limit.kind() instanceof Kind.Exempted ? Optional.of(by) : Optional.empty();
  }

  private Optional<Message> nearMiss(Limit limit, Outcome outcome) {
    Ratio near = judged.plan().practice().nearMiss();
    return outcome
        .measured()
        .filter(measured -> limit.kind() instanceof Kind.Span && outcome.verdict() == Verdict.MET)
        .filter(time -> time.margin().value().isBelow(time.limit().value().times(near)))
        .map(time -> say("check.remark.near-miss", "a near miss: {0} to spare", time.margin()));
  }

  /** Limits for the same hazard that the readings meet, and why they don't count here. */
  private Stream<Message> wouldHavePassed(Limit missed) {
    return judged.plan().unused(judged.product(), missed.covers()).stream()
        .filter(other -> other.kind().getClass() == missed.kind().getClass())
        .filter(other -> judge.apply(other).verdict() == Verdict.MET)
        .map(
            other ->
                say(
                    "check.remark.meets",
                    "it meets {0} ({1}), {2}",
                    other.name(),
                    judged.plan().cited(other.source()),
                    why(other)));
  }

  private Message why(Limit other) {
    List<Message> unproved = judged.unproved(other.when());
    Message what =
        other.source().standing() == Standing.MEMORY
            ? say("check.remark.limit-from-memory", "a limit from memory")
            : say("check.remark.limit", "a limit");
    return unproved.isEmpty()
        ? say("check.remark.not-used", "{0} which this plan does not use", what)
        : say(
            "check.remark.not-usable",
            "{0} which the lot can't use, since it does not show {1}",
            what,
            Listing.and(unproved));
  }
}
