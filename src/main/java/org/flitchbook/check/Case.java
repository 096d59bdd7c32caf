package org.flitchbook.check;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Stay;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.measure.Unit;
import org.flitchbook.plan.Plan;
import org.flitchbook.plan.Product;
import org.flitchbook.reading.Entry;
import org.flitchbook.reading.Moment;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;

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
      case NOT_BEGUN ->
          Optional.of(
              Outcome.pending(
                  say("check.step.not-begun", "the step {0} has not begun", step(step))));
      case MISSING ->
          Optional.of(
              Outcome.notShown(
                  say(
                      "check.step.passed",
                      "no \"{0}\" entry, though a later step has begun",
                      what(step.into()))));
      default -> Optional.empty();
    };
  }

  /** Pending while the step runs, not shown once it is over. */
  Outcome missing(Step step, String what) {
    return phase(step) == Phase.RUNNING || phase(step) == Phase.NOT_BEGUN
        ? Outcome.pending(
            say("check.step.lacks-so-far", "the step {0} runs; {1} so far", step(step), what))
        : Outcome.notShown(what);
  }

  /**
   * The outcome where there is no time to look at: the step has not begun, or of the release nobody
   * wrote when the work before it ended.
   */
  Optional<Outcome> withoutStay(Step step) {
    return withoutStep(step)
        .or(
            () ->
                stay(step).isPresent()
                    ? Optional.empty()
                    : Optional.of(
                        Outcome.notShown(
                            say(
                                "check.step.end-unknown",
                                "no entry says when the last step ended"))));
  }

  /** In the release the lot is from the end of its last step of work to its last dispatch. */
  Optional<Stay> stay(Step step) {
    if (step != Step.RELEASE) {
      return lot.stay(step);
    }
    Optional<Entry> left = lot.last(Step.RELEASE.outOf());
    return lot.stays().stream()
        .reduce((earlier, later) -> later)
        .flatMap(Stay::out)
        .map(from -> new Stay(step, from, left, List.of(visit(from, left))));
  }

  private static Stay.Visit visit(Entry from, Optional<Entry> left) {
    return new Stay.Visit("", from.time(), left.map(Entry::time));
  }

  /** The readings of something during a step; in the release those after the last step of work. */
  List<Track> tracks(What what, Step step) {
    List<Track> tracks = lot.tracks(what, step);
    return step == Step.RELEASE
        ? tracks.stream().flatMap(track -> inRelease(track).stream()).toList()
        : tracks;
  }

  private Optional<Track> inRelease(Track track) {
    return stay(Step.RELEASE)
        .flatMap(stay -> track.during(stay.into().time().earliest(), endOf(Step.RELEASE).latest()));
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

  /** {@code 14:05} or {@code 14:05:30} on the plan's clock. */
  String clock(long millis) {
    return local(millis).toLocalTime().toString();
  }

  /** {@code 2026-02-24 14:05} on the plan's clock. */
  String date(long millis) {
    LocalDateTime local = local(millis);
    return local.toLocalDate() + " " + local.toLocalTime();
  }

  /** {@code 2026-02-24 14:05} on the plan's clock. */
  String date(Instant time) {
    return date(time.toEpochMilli());
  }

  private LocalDateTime local(long millis) {
    return Instant.ofEpochMilli(millis).atZone(plan.establishment().zone()).toLocalDateTime();
  }

  /** A reading's probe, and when it was read: {@code P1 at 14:05}. */
  String read(Track track, String when) {
    return say("check.reading.at", "{0} at {1}", probe(track), when);
  }

  /** {@code 30 min}, or {@code 30 min, at worst 31 min} where it was written to the minute. */
  String time(Duration written, Duration worst, Unit unit) {
    String asWritten = time(written, unit).shown();
    String atWorst = time(worst, unit).shown();
    return asWritten.equals(atWorst)
        ? asWritten
        : say("check.reading.at-worst", "{0}, at worst {1}", asWritten, atWorst);
  }

  /** A fixed wording in the language of the plan. */
  String say(String id, String english, Object... values) {
    return plan.words().say(id, english, values);
  }

  String step(Step step) {
    return plan.words().word("step", step.word());
  }

  String what(What what) {
    return plan.words().word("what", what.word());
  }

  String probe(Track track) {
    return plan.words().word("probe", track.called());
  }

  /** What is told where an entry is missing. */
  String noEntry(What what) {
    return say("check.entry.none", "no \"{0}\" entry", what(what));
  }

  /** What is told where nothing of that kind was read. */
  String noReading(What what) {
    return say("check.reading.none", "no {0} on record", what(what));
  }

  /** The same of one piece, where there are pieces. */
  String ofPiece(String told, String piece) {
    return piece.isEmpty() ? told : say("check.of-piece", "{0} of piece {1}", told, piece);
  }

  String runs(Step step) {
    return say("check.step.runs", "the step {0} runs", step(step));
  }

  static Quantity time(Duration duration, Unit unit) {
    return new Quantity(Ratio.of(duration.toMillis(), 1000), Unit.SECOND).in(unit);
  }

  static Quantity time(long millis, Unit unit) {
    return time(Duration.ofMillis(millis), unit);
  }
}
