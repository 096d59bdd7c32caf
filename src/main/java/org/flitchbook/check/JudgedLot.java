package org.flitchbook.check;

import static org.flitchbook.message.Message.say;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Stay;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Level;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.measure.Unit;
import org.flitchbook.message.Argument;
import org.flitchbook.message.Listing;
import org.flitchbook.message.Message;
import org.flitchbook.message.Time;
import org.flitchbook.message.Word;
import org.flitchbook.plan.Conditions;
import org.flitchbook.plan.Figure;
import org.flitchbook.plan.Plan;
import org.flitchbook.plan.Product;
import org.flitchbook.reading.Entry;
import org.flitchbook.reading.Moment;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;
import org.flitchbook.sums.Shift;

/** One lot at the moment judged, as the judges of all kinds see it. */
record JudgedLot(Plan plan, Lot lot, Product product, Instant moment) {

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

  /** Whether the step has not begun or is not over. */
  boolean isToCome(Step step) {
    return phase(step) == Phase.RUNNING || phase(step) == Phase.NOT_BEGUN;
  }

  /** The outcome where a step's readings are wanted and it has none yet, or never had. */
  Optional<Outcome> withoutStep(Step step) {
    return switch (phase(step)) {
      case NOT_BEGUN ->
          Optional.of(
              Outcome.pending(say("check.step.not-begun", "the step {0} has not begun", step)));
      case MISSING -> Optional.of(Outcome.notShown(passed(step.into())));
      default -> Optional.empty();
    };
  }

  /**
   * The outcome where something of a step is wanted and isn't there, and perhaps no step either.
   */
  Outcome without(Step step, Message what) {
    return withoutStep(step).orElseGet(() -> missing(step, what));
  }

  /**
   * The outcome where nothing of the core was read. As long as its readings may go on, the log is
   * still in the smoker or the cooler, and is filed once it is pulled.
   */
  Outcome withoutCore(Step step) {
    Message none = noReading(What.INTERNAL_TEMPERATURE);
    return coreIsOver() || isToCome(step)
        ? without(step, none)
        : Outcome.pending(say("check.step.log-to-come", "{0} so far; the chill still runs", none));
  }

  /** Pending while the step runs, not shown once it is over. */
  Outcome missing(Step step, Message what) {
    return isToCome(step)
        ? Outcome.pending(
            say("check.step.lacks-so-far", "the step {0} runs; {1} so far", step, what))
        : Outcome.notShown(what);
  }

  /**
   * The outcome where there is no time to look at: the step has not begun, or of the release nobody
   * wrote when the work before it ended.
   */
  Optional<Outcome> withoutStay(Step step) {
    Message unknown = say("check.step.end-unknown", "no entry says when the last step ended");
    return stay(step).isPresent()
        ? withoutStep(step)
        : withoutStep(step).or(() -> Optional.of(Outcome.notShown(unknown)));
  }

  /** In the release the lot is from the end of its last step of work to its last dispatch. */
  Optional<Stay> stay(Step step) {
    if (step != Step.RELEASE) {
      return lot.stay(step);
    }
    Optional<Entry> left = lot.last(Step.RELEASE.outOf());
    Optional<Moment> until = left.map(Entry::time);
    return lot.stays().stream()
        .reduce((earlier, later) -> later)
        .flatMap(Stay::out)
        .map(
            from ->
                new Stay(
                    step, from, left, List.of(new Stay.Visit("", from.time(), until)), List.of()));
  }

  /** The readings of something during a step; in the release those after the last step of work. */
  List<Track> tracks(What what, Step step) {
    List<Track> tracks = lot.curves(what, step, plan.practice());
    return step == Step.RELEASE ? tracks.stream().flatMap(this::inRelease).toList() : tracks;
  }

  /** The probes that are asked how hot it became. */
  List<Track> heated(What what) {
    return lot.heated(what, Step.SMOKE, plan.practice());
  }

  private Stream<Track> inRelease(Track track) {
    return stay(Step.RELEASE)
        .map(stay -> stay.into().time().earliest())
        .flatMap(from -> track.during(from, endOf(Step.RELEASE).latest()))
        .stream();
  }

  /** All entries about some things, as looked at. */
  Stream<Dependency> entries(What... some) {
    return Stream.of(some)
        .flatMap(what -> lot.all(what).stream())
        .map(entry -> Dependency.lookedAt(entry.place()));
  }

  /** When the step ended, or the moment judged while it runs. */
  Moment endOf(Step step) {
    Optional<Moment> end =
        step == Step.RELEASE ? stay(step).flatMap(Stay::out).map(Entry::time) : lot.end(step);
    return end.orElse(Moment.exactly(moment));
  }

  /**
   * Whether all readings of the core are in: the chill is over, or the smoke where none follows.
   */
  boolean coreIsOver() {
    Step last = product.steps().contains(Step.CHILL) ? Step.CHILL : Step.SMOKE;
    return phase(last) == Phase.OVER;
  }

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
    Pieces pieces = new Pieces(this);
    return pieces.names().stream().noneMatch(piece -> pieces.of(What.THICKNESS, piece).isEmpty())
        && lot.all(What.THICKNESS).stream().noneMatch(entry -> entry.amount().isAbove(most));
  }

  private boolean hasRind(List<String> wanted) {
    return lot.last(What.RIND).filter(entry -> wanted.contains(entry.value())).isPresent();
  }

  private boolean has(Figure figure, Quantity wanted) {
    return Curing.ingoing(this, figure, Optional.empty()).stream()
        .allMatch(
            piece -> piece.worked().filter(worked -> !worked.value().isBelow(wanted)).isPresent());
  }

  /** A reading as it was written: a temperature in the plan's unit, or a share in per cent. */
  Quantity level(Track track, int index) {
    return Level.quantity(track.level(index, Shift.AS_WRITTEN), unit(track));
  }

  /** How far the true value may lie from a reading, on one side. */
  Quantity error(Track track, int index, Shift side) {
    long off = Math.abs(track.level(index, side) - track.level(index, Shift.AS_WRITTEN));
    return Level.difference(off, unit(track));
  }

  private Unit unit(Track track) {
    return track.unit().dimension() == Dimension.SHARE
        ? Unit.PERCENT
        : plan.establishment().temperature();
  }

  /** {@code 14:05} or {@code 14:05:30} on the plan's clock. */
  Time clock(long millis) {
    return Time.clock(Instant.ofEpochMilli(millis), plan.establishment().zone());
  }

  /** {@code 2026-02-24 14:05} on the plan's clock. */
  Time date(long millis) {
    return date(Instant.ofEpochMilli(millis));
  }

  Time date(Instant time) {
    return Time.dayAndClock(time, plan.establishment().zone());
  }

  /** {@code 30 min}, or {@code 30 min, at worst 31 min} where it was written to the minute. */
  static Argument time(Duration written, Duration worst, Unit unit) {
    Quantity asWritten = time(written, unit);
    Quantity atWorst = time(worst, unit);
    return asWritten.shown().equals(atWorst.shown())
        ? asWritten
        : say("check.reading.at-worst", "{0}, at worst {1}", asWritten, atWorst);
  }

  static Quantity time(Duration duration, Unit unit) {
    return new Quantity(Ratio.of(duration.toMillis(), 1000), Unit.SECOND).in(unit);
  }

  static Quantity time(long millis, Unit unit) {
    return time(Duration.ofMillis(millis), unit);
  }

  static long millis(Quantity time) {
    return time.inBase().times(Ratio.of(1000)).floor().longValueExact();
  }

  static Message passed(What what) {
    return say("check.step.passed", "no \"{0}\" entry, though a later step has begun", what);
  }

  static Message runs(Step step) {
    return say("check.step.runs", "the step {0} runs", step);
  }

  /** Why a time is not shown that holds only as it was written, to the minute. */
  static Message worseMinutes(Quantity worst) {
    return say("check.worse-minutes", "{0} in the worst case of both minutes", worst);
  }

  static Message noEntry(What what) {
    return say("check.entry.none", "no \"{0}\" entry", what);
  }

  static Message noReading(What what) {
    return say("check.reading.none", "no {0} on record", what);
  }

  /** The same of one piece, where there are pieces. */
  static Message ofPiece(Message said, String piece) {
    return piece.isEmpty() ? said : say("check.of-piece", "{0} of piece {1}", said, piece);
  }

  /** The probe's name, or that it was read by hand. */
  static Word probe(Track track) {
    return new Word("probe", track.name());
  }
}
