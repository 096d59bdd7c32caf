package org.flitchbook.check;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.plan.Figure;
import org.flitchbook.plan.Kind;
import org.flitchbook.plan.Limit;
import org.flitchbook.plan.Standing;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;
import org.flitchbook.sums.Credit;
import org.flitchbook.sums.Lethality;
import org.flitchbook.sums.Resistance;
import org.flitchbook.sums.Shift;

/** What a person should know beside a verdict. A remark changes no verdict. */
final class Remarks {

  /**
   * A time with less than a tenth of its limit to spare is a near miss; common practice, no source.
   */
  private static final Ratio NEAR = Ratio.of(1, 10);

  private final Case judged;
  private final Function<Limit, Outcome> judge;

  /**
   * Remarks on one case.
   *
   * @param judge judges a limit of a rule set that the plan does not use
   */
  Remarks(Case judged, Function<Limit, Outcome> judge) {
    this.judged = judged;
    this.judge = judge;
  }

  String on(Limit limit, Outcome outcome) {
    List<String> remarks = new ArrayList<>();
    guardBand(outcome).ifPresent(remarks::add);
    nearMiss(limit, outcome).ifPresent(remarks::add);
    integrated(limit).ifPresent(remarks::add);
    rindShare(limit).ifPresent(remarks::add);
    exempt(limit, outcome).ifPresent(remarks::add);
    if (outcome.verdict().isMissed()) {
      remarks.addAll(wouldHavePassed(limit));
    }
    return String.join("; ", remarks);
  }

  /** The legal limit is judged on the weights as written; what the scales can prove is told. */
  private Optional<String> guardBand(Outcome outcome) {
    return outcome
        .measured()
        .filter(measured -> !measured.charged())
        .flatMap(
            measured ->
                measured
                    .uncertainty()
                    .filter(half -> measured.margin().value().abs().isBelow(half.value()))
                    .map(
                        half ->
                            judged.say(
                                "check.remark.guard-band",
                                "inside the guard band of ± {0}: these scales can't prove on which"
                                    + " side of the limit it is",
                                half.shown())));
  }

  /** The heat added up for the coldest probe: support beside the table, never in its place. */
  private Optional<String> integrated(Limit limit) {
    List<Track> tracks = judged.lot().tracks(What.INTERNAL_TEMPERATURE, Step.SMOKE);
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
                judged.say(
                    "check.remark.integral",
                    "the heat added up while it rose gives {0}, as support beside the table and"
                        + " never in its place",
                    heat.isCapped()
                        ? judged.say("words.at-least", "at least {0}", heat.shown())
                        : heat.shown()));
  }

  /** A sum on an estimated skin-free weight says whose estimate it is. */
  private Optional<String> rindShare(Limit limit) {
    boolean onMeat =
        limit.kind() instanceof Kind.Bound bound
            && (bound.figure().isIngoing() || bound.figure() == Figure.YIELD);
    return judged
        .product()
        .rindShare()
        .filter(share -> onMeat && new Curing(judged).isRindEstimated())
        .map(
            share ->
                judged.say(
                    "check.remark.rind-share",
                    "the rind was not weighed, so {0} of the weight counts as rind by {1}, {2}",
                    share.value(),
                    judged.plan().cited(share.source()),
                    share.source().standing().told()));
  }

  /** Beside a limit that a reading meets, an exemption must not pass for one. */
  private Optional<String> exempt(Limit limit, Outcome outcome) {
    return Optional.of(outcome.reason())
        .filter(reason -> limit.kind() instanceof Kind.Exempted)
        .map(reason -> judged.say("check.remark.exempt", "met by no reading, but {0}", reason));
  }

  private Optional<String> nearMiss(Limit limit, Outcome outcome) {
    boolean timed = limit.kind() instanceof Kind.Span && outcome.verdict() == Verdict.MET;
    return outcome
        .measured()
        .filter(measured -> timed)
        .filter(measured -> isNear(measured.margin(), measured.limit()))
        .map(
            measured ->
                judged.say(
                    "check.remark.near-miss",
                    "a near miss: {0} to spare",
                    measured.margin().shown()));
  }

  private static boolean isNear(Quantity margin, Quantity limit) {
    return margin.value().isBelow(limit.value().times(NEAR));
  }

  /** Limits for the same hazard that the readings meet, and why they don't count here. */
  private List<String> wouldHavePassed(Limit missed) {
    List<String> told = new ArrayList<>();
    for (Limit other : judged.plan().unused(judged.product(), missed.covers())) {
      if (other.kind().getClass() == missed.kind().getClass()
          && judge.apply(other).verdict() == Verdict.MET) {
        told.add(
            judged.say(
                "check.remark.meets",
                "it meets {0} ({1}), {2}",
                other.name(),
                judged.plan().cited(other.source()),
                why(other)));
      }
    }
    return told;
  }

  private String why(Limit other) {
    List<String> unproved = new Proof(judged).unproved(other.when());
    String what =
        other.source().standing() == Standing.MEMORY
            ? judged.say("check.remark.limit-from-memory", "a limit from memory")
            : judged.say("check.remark.limit", "a limit");
    return unproved.isEmpty()
        ? judged.say("check.remark.not-used", "{0} which this plan does not use", what)
        : judged.say(
            "check.remark.not-usable",
            "{0} which the lot can't use, since it does not show {1}",
            what,
            judged.plan().words().together(unproved));
  }
}
