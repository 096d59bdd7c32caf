package org.flitchbook.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.flitchbook.input.Place;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Level;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.measure.Unit;
import org.flitchbook.message.Argument;
import org.flitchbook.message.Message;
import org.flitchbook.plan.Kind;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;
import org.flitchbook.sums.Shift;
import org.flitchbook.sums.Sums;
import org.flitchbook.sums.Worked;

/** Judges a computed figure against a ceiling or a floor. */
final class BoundJudge {

  private final Case judged;
  private final Kind.Bound bound;
  private final Step step;

  BoundJudge(Case judged, Kind.Bound bound, Step step) {
    this.judged = judged;
    this.bound = bound;
    this.step = step;
  }

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

  private String say(String id, String english, Object... values) {
    return judged.say(id, english, values);
  }

  private Outcome compared(Worked worked, List<Place> evidence) {
    return compared(measured(worked.value()).by(worked.formula()), worked, evidence, "");
  }

  private Measured measured(Quantity value) {
    return Measured.of(bound.figure().word(), value, bound.ceiling(), bound.limit());
  }

  private Outcome compared(
      Measured measured, Argument formula, List<Place> evidence, String piece) {
    Outcome outcome =
        holds(measured.value())
            ? Outcome.of(Verdict.MET, "")
            : Outcome.of(Verdict.NOT_MET, beyond(measured.value(), piece));
    return outcome.measured(measured, formula.in(judged.plan().words())).from(evidence);
  }

  private String beyond(Quantity value, String piece) {
    String which =
        piece.isEmpty()
            ? value.shown()
            : say("check.bound.in-piece", "{0} in piece {1}", value.shown(), piece);
    return bound.ceiling()
        ? say("check.bound.above", "{0} is above {1}", which, bound.limit())
        : say("check.bound.below", "{0} is below {1}", which, bound.limit());
  }

  private Outcome ingoing() {
    Optional<Outcome> without = judged.withoutStep(Step.CURE);
    if (without.isPresent()) {
      return without.get();
    }
    List<Outcome> pieces = new ArrayList<>();
    for (Curing.Ingoing each : new Curing(judged, bound.potassium()).ingoing(bound.figure())) {
      pieces.add(
          each.worked().map(worked -> compared(each, worked)).orElseGet(() -> without(each)));
    }
    return Outcome.worstOfAll(pieces);
  }

  private Outcome without(Curing.Ingoing each) {
    return Outcome.notShown(each.lacks().orElseThrow().in(judged.plan().words()))
        .from(each.evidence());
  }

  /** Masses are judged as written; what the scales can prove is printed beside. */
  private Outcome compared(Curing.Ingoing each, Worked worked) {
    Measured measured = measured(worked.value()).by(worked.formula());
    return compared(
        each.uncertainty().map(measured::provable).orElse(measured),
        worked,
        each.evidence(),
        each.piece());
  }

  /** The last weight of the last step on record against the skin-free green weight. */
  private Outcome yieldAtTheEnd() {
    Optional<Quantity> green = new Curing(judged).massOfAll();
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
    List<Place> evidence = new ArrayList<>(together.stream().map(Entry::place).toList());
    judged.lot().all(What.GREEN_WEIGHT).forEach(entry -> evidence.add(entry.place()));
    Outcome outcome = compared(worked, evidence);
    boolean final_ = last.sheet().step().filter(step::equals).isPresent();
    return final_ ? outcome : beforeTheLast(outcome);
  }

  private Outcome beforeTheLast(Outcome outcome) {
    return switch (judged.phase(step)) {
      case NOT_BEGUN, RUNNING ->
          outcome.verdict() == Verdict.MET
              ? outcome.but(
                  Verdict.PENDING,
                  say(
                      "check.bound.weight-to-come",
                      "the weight after {0} is to come",
                      judged.step(step)))
              : outcome.but(Verdict.PENDING, say("check.bound.so-far", "so far"));
      default ->
          outcome.but(
              Verdict.NOT_SHOWN,
              say(
                  "check.bound.weight-missing",
                  "no weight was written after the step {0}",
                  judged.step(step)));
    };
  }

  /** The lowest of the probes' own peaks, in the heat. */
  private Outcome peak() {
    Optional<Outcome> without = judged.withoutStep(Step.SMOKE);
    List<Track> tracks = judged.lot().tracks(What.INTERNAL_TEMPERATURE, Step.SMOKE);
    if (tracks.isEmpty()) {
      return without.orElseGet(
          () -> judged.missing(Step.SMOKE, judged.noReading(What.INTERNAL_TEMPERATURE)));
    }
    return Outcome.worstOfAll(tracks.stream().map(this::peak).toList());
  }

  private Outcome peak(Track track) {
    int peak = -1;
    for (int i = 0; i < track.size(); i++) {
      boolean counts = bound.ceiling() || track.stands(i);
      if (counts && (peak < 0 || track.level(i, Shift.DOWN) > track.level(peak, Shift.DOWN))) {
        peak = i;
      }
    }
    Unit unit = judged.plan().establishment().temperature();
    Quantity value = Level.quantity(track.level(peak, Shift.AS_WRITTEN), unit);
    Quantity off = Shown.spread(track, peak, bound.ceiling() ? Shift.UP : Shift.DOWN, unit);
    Quantity worst =
        new Quantity(
            bound.ceiling() ? value.value().plus(off.value()) : value.value().minus(off.value()),
            unit);
    Measured measured = measured(value).less(off);
    return verdict(value, worst, judged.probe(track))
        .measured(measured, Shown.worst(value, off, bound.ceiling(), read(track, peak)))
        .from(
            List.of(track.place(peak)),
            bound.ceiling() ? Rest.on(track) : Rest.on(track, peak, peak));
  }

  private String read(Track track, int index) {
    return judged.read(track, judged.clock(track.earliest(index)));
  }

  private Outcome verdict(Quantity value, Quantity worst, String probe) {
    if (holds(worst)) {
      return Outcome.of(Verdict.MET, "");
    }
    if (judged.phase(Step.SMOKE) == Case.Phase.RUNNING && !bound.ceiling()) {
      return Outcome.pending(
          say("check.bound.peaks-so-far", "{0} peaks at {1} so far", probe, value.shown()));
    }
    return holds(value)
        ? Outcome.notShown(doubted(probe, value))
        : Outcome.of(Verdict.NOT_MET, peaks(probe, value));
  }

  private String doubted(String probe, Quantity value) {
    return bound.ceiling()
        ? say(
            "check.bound.peaks-doubted-above",
            "{0} peaks at {1}; with the instrument's error against the lot it is above {2}",
            probe,
            value.shown(),
            bound.limit())
        : say(
            "check.bound.peaks-doubted-below",
            "{0} peaks at {1}; with the instrument's error against the lot it is below {2}",
            probe,
            value.shown(),
            bound.limit());
  }

  private String peaks(String probe, Quantity value) {
    return bound.ceiling()
        ? say(
            "check.bound.peaks-above",
            "{0} peaks at {1}, above {2}",
            probe,
            value.shown(),
            bound.limit())
        : say(
            "check.bound.peaks-below",
            "{0} peaks at {1}, below {2}",
            probe,
            value.shown(),
            bound.limit());
  }

  private Outcome laboratory(What what) {
    List<Entry> results = judged.lot().all(what);
    if (results.isEmpty()) {
      return judged.missing(
          step, say("check.bound.no-result", "no laboratory result for {0}", judged.what(what)));
    }
    return Outcome.worstOfAll(results.stream().map(this::laboratory).toList());
  }

  private Outcome laboratory(Entry entry) {
    Message formula = Message.say("check.bound.read", "{0} = {1}", entry.shown(), entry.amount());
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
