package org.flitchbook.check;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.flitchbook.lot.Lot;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.measure.Unit;
import org.flitchbook.plan.Plan;
import org.flitchbook.plan.Product;
import org.flitchbook.reading.Moment;
import org.flitchbook.sheet.Step;

/** One lot at the moment judged, as the judges of all kinds see it. */
record Case(Plan plan, Lot lot, Product product, Instant moment) {

  /** How far a step has come. */
  enum Phase {
    NOT_BEGUN,
    RUNNING,
    OVER,
    /** A later step has begun and this one has no entry that says that it went in. */
    MISSING
  }

  Phase phase(Step step) {
    if (step == Step.RELEASE) {
      return lot.first(Step.RELEASE.outOf()).isPresent() ? Phase.OVER : Phase.NOT_BEGUN;
    }
    if (lot.stay(step).isEmpty()) {
      return lot.laterThan(step).isPresent() ? Phase.MISSING : Phase.NOT_BEGUN;
    }
    return lot.isRunning(step) ? Phase.RUNNING : Phase.OVER;
  }

  /** The outcome where a step's readings are wanted and it has none yet, or never had. */
  Optional<Outcome> withoutStep(Step step) {
    return switch (phase(step)) {
      case NOT_BEGUN -> Optional.of(Outcome.pending("the step " + step.word() + " has not begun"));
      case MISSING ->
          Optional.of(
              Outcome.notShown(
                  "no \"" + step.into().word() + "\" entry, though a later step has begun"));
      default -> Optional.empty();
    };
  }

  /** Pending while the step runs, not shown once it is over. */
  Outcome missing(Step step, String what) {
    return phase(step) == Phase.RUNNING || phase(step) == Phase.NOT_BEGUN
        ? Outcome.pending("the step " + step.word() + " runs; " + what + " so far")
        : Outcome.notShown(what);
  }

  /** When the step ended, or the moment judged while it runs. */
  Moment endOf(Step step) {
    return lot.end(step).orElse(Moment.exactly(moment));
  }

  /**
   * Whether all readings of the core are in: the chill is over, or the smoke where none follows.
   */
  boolean coreIsOver() {
    Step last = product.steps().contains(Step.CHILL) ? Step.CHILL : Step.SMOKE;
    return phase(last) == Phase.OVER;
  }

  static Quantity time(Duration duration, Unit unit) {
    return new Quantity(Ratio.of(duration.toMillis(), 1000), Unit.SECOND).in(unit);
  }

  static Quantity time(long millis, Unit unit) {
    return time(Duration.ofMillis(millis), unit);
  }
}
