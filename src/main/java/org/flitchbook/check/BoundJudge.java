package org.flitchbook.check;

import static org.flitchbook.message.Message.say;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.flitchbook.input.Place;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.measure.Unit;
import org.flitchbook.message.Argument;
import org.flitchbook.message.Message;
import org.flitchbook.message.Time;
import org.flitchbook.message.Word;
import org.flitchbook.plan.Figure;
import org.flitchbook.plan.Kind;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;
import org.flitchbook.sums.Shift;
import org.flitchbook.sums.Sums;
import org.flitchbook.sums.Worked;

/** Judges a computed figure against a ceiling or a floor. */
record BoundJudge(JudgedLot judged, Kind.Bound bound, Step step) {

  Outcome judge() {
    return switch (bound.figure()) {
      case INGOING_NITRITE,
          INGOING_NITRITE_ION,
          INGOING_NITRATE,
          INGOING_ACCELERATOR,
          INGOING_SALT ->
          ingoing();
      case YIELD -> yieldAtTheEnd();
      case PEAK_INTERNAL_TEMPERATURE -> peak();
      case RESIDUAL_NITRITE -> laboratory(What.RESIDUAL_NITRITE);
      case RESIDUAL_NITRITE_ION -> laboratory(What.RESIDUAL_NITRITE_ION);
      case RESIDUAL_NITRATE -> laboratory(What.RESIDUAL_NITRATE);
      case SALT -> laboratory(What.LAB_SALT);
      case WATER_ACTIVITY -> laboratory(What.WATER_ACTIVITY);
      case PH -> laboratory(What.PH);
      case BRINE_STRENGTH -> brine();
    };
  }

  private boolean holds(Quantity value) {
    return bound.ceiling() ? !value.isAbove(bound.limit()) : !value.isBelow(bound.limit());
  }

  private Outcome compared(Worked worked, List<Place> evidence) {
    return compared(measured(worked), worked, evidence, "");
  }

  private Measured measured(Worked worked) {
    return measured(worked.value()).by(worked.formula());
  }

  private Measured measured(Quantity value) {
    return Measured.of(bound.figure(), value, bound.ceiling(), bound.limit());
  }

  private Outcome compared(
      Measured measured, Argument formula, List<Place> evidence, String piece) {
    Outcome outcome =
        holds(measured.value()) ? Outcome.met() : Outcome.notMet(beyond(measured.value(), piece));
    return outcome.measured(measured, Message.of(formula)).from(evidence);
  }

  private Message beyond(Quantity value, String piece) {
    Argument which =
        piece.isEmpty() ? value : say("check.bound.in-piece", "{0} in piece {1}", value, piece);
    Argument limit = bound.limit().asWritten();
    return bound.ceiling()
        ? say("check.bound.above", "{0} is above {1}", which, limit)
        : say("check.bound.below", "{0} is below {1}", which, limit);
  }

  private Outcome ingoing() {
    return judged
        .withoutStep(Step.CURE)
        .map(toCome -> toCome.beside(cures()))
        .orElseGet(
            () ->
                Outcome.worstOfAll(
                    Curing.ingoing(judged, bound.figure(), bound.potassium()).stream()
                        .map(this::piece)
                        .toList()));
  }

  private Outcome piece(Curing.Ingoing cured) {
    return cured
        .worked()
        .map(worked -> compared(proved(worked, cured), worked, cured.evidence(), cured.piece()))
        .orElseGet(() -> without(cured));
  }

  /** No sum was made; all that it could be made of was looked at. */
  private Outcome without(Curing.Ingoing cured) {
    return Outcome.notShown(cured.lacks().orElseThrow()).from(cured.evidence()).beside(cures());
  }

  private Stream<Dependency> cures() {
    Stream<Dependency> own =
        bound.figure() == Figure.INGOING_ACCELERATOR
            ? judged.entries(What.ACCELERATOR)
            : Stream.empty();
    return Stream.concat(
        own, judged.entries(What.CURING_SALT, What.PICKLE, What.PUMP, What.PICK_UP));
  }

  /** Masses are judged as written; what the scales can prove is printed beside. */
  private Measured proved(Worked worked, Curing.Ingoing cured) {
    Measured measured = measured(worked);
    return cured.uncertainty().map(measured::provable).orElse(measured);
  }

  /** The last weight of the last step on record against the skin-free green weight. */
  private Outcome yieldAtTheEnd() {
    Optional<Quantity> green = new Pieces(judged).massOfAll();
    List<Entry> weights = judged.lot().all(What.WEIGHT);
    if (green.isEmpty()) {
      return judged.missing(step, say("check.bound.no-green-weight", "no skin-free green weight"));
    }
    if (weights.isEmpty()) {
      return judged.missing(step, say("check.bound.no-weight", "no weight after the cure"));
    }
    Entry last = weights.get(weights.size() - 1);
    List<Entry> together = weights.stream().filter(entry -> entry.sheet() == last.sheet()).toList();
    Ratio sum =
        together.stream().map(each -> each.amount().inBase()).reduce(Ratio.ZERO, Ratio::plus);
    Worked worked = Sums.yieldOf(new Quantity(sum, Unit.GRAM), green.get());
    Stream<Entry> weighed =
        Stream.concat(together.stream(), judged.lot().all(What.GREEN_WEIGHT).stream());
    Outcome outcome = compared(worked, weighed.map(Entry::place).toList());
    boolean isFinal = last.sheet().step().filter(step::equals).isPresent();
    return isFinal ? outcome : beforeTheLast(outcome);
  }

  private Outcome beforeTheLast(Outcome outcome) {
    if (!judged.isToCome(step)) {
      return outcome.but(
          Verdict.NOT_SHOWN,
          say("check.bound.weight-missing", "no weight was written after the step {0}", step));
    }
    return outcome.but(
        Verdict.PENDING,
        outcome.verdict() == Verdict.MET
            ? say("check.bound.weight-to-come", "the weight after {0} is to come", step)
            : say("check.bound.so-far", "so far"));
  }

  /** The lowest of the probes' own peaks, in the heat; for a floor, of readings that may count. */
  private Outcome peak() {
    List<Track> tracks =
        bound.ceiling()
            ? judged.tracks(What.INTERNAL_TEMPERATURE, Step.SMOKE)
            : judged.heated(What.INTERNAL_TEMPERATURE);
    return tracks.isEmpty()
        ? judged.withoutCore(Step.SMOKE)
        : Outcome.worstOfAll(tracks.stream().map(this::peak).toList())
            .beside(Dependency.lookedAt(tracks));
  }

  private Outcome peak(Track track) {
    int highest =
        track.farthest(Shift.DOWN, true, i -> bound.ceiling() || track.stands(i)).orElseThrow();
    WorstReading peak = new WorstReading(judged, track, highest, bound.ceiling());
    Time at = judged.clock(track.earliest(peak.index()));
    return compared(peak)
        .measured(peak.measured(bound.figure(), bound.limit()), peak.formula(at))
        .from(
            List.of(peak.place()),
            bound.ceiling()
                ? Dependency.on(track)
                : Dependency.on(track, peak.index(), peak.index()));
  }

  private Outcome compared(WorstReading peak) {
    if (holds(peak.worst())) {
      return Outcome.met();
    }
    Word probe = JudgedLot.probe(peak.track());
    if (judged.phase(Step.SMOKE) == JudgedLot.Phase.RUNNING && !bound.ceiling()) {
      return Outcome.pending(
          say("check.bound.peaks-so-far", "{0} peaks at {1} so far", probe, peak.value()));
    }
    if (!bound.ceiling() && !holds(peak.value()) && new Unseen(judged, peak).isBeside()) {
      return Outcome.notShown(
          say(
              "check.bound.peak-unseen",
              "{0} peaks at {1} beside a time without readings, in which nobody saw how hot it"
                  + " became",
              probe,
              peak.value()));
    }
    return holds(peak.value())
        ? Outcome.notShown(inDoubt(probe, peak.value()))
        : Outcome.notMet(peaks(probe, peak.value()));
  }

  private Message inDoubt(Word probe, Quantity value) {
    Argument limit = bound.limit().asWritten();
    return bound.ceiling()
        ? say(
            "check.bound.peaks-doubted-above",
            "{0} peaks at {1}; with the instrument's error against the lot it is above {2}",
            probe,
            value,
            limit)
        : say(
            "check.bound.peaks-doubted-below",
            "{0} peaks at {1}; with the instrument's error against the lot it is below {2}",
            probe,
            value,
            limit);
  }

  private Message peaks(Word probe, Quantity value) {
    Argument limit = bound.limit().asWritten();
    return bound.ceiling()
        ? say("check.bound.peaks-above", "{0} peaks at {1}, above {2}", probe, value, limit)
        : say("check.bound.peaks-below", "{0} peaks at {1}, below {2}", probe, value, limit);
  }

  private Outcome laboratory(What what) {
    List<Entry> results = judged.lot().all(what);
    return results.isEmpty()
        ? judged.missing(step, say("check.bound.no-result", "no laboratory result for {0}", what))
        : Outcome.worstOfAll(results.stream().map(this::laboratory).toList());
  }

  private Outcome laboratory(Entry entry) {
    Message formula = say("check.bound.read", "{0} = {1}", entry.shown(), entry.amount());
    return compared(measured(entry.amount()), formula, List.of(entry.place()), "");
  }

  /** Salt ÷ (salt + moisture) × 100, from laboratory figures only (FSIS 2005, p. 160). */
  private Outcome brine() {
    Optional<Entry> salt = judged.lot().last(What.LAB_SALT);
    Optional<Entry> moisture = judged.lot().last(What.MOISTURE);
    if (salt.isEmpty() || moisture.isEmpty()) {
      return judged.missing(
          step, say("check.bound.no-brine", "no laboratory results for both salt and moisture"));
    }
    Worked worked = Sums.brineStrength(salt.get().amount(), moisture.get().amount());
    return compared(worked, List.of(salt.get().place(), moisture.get().place()));
  }
}
