package org.flitchbook.check;

import static org.flitchbook.message.Message.say;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.input.Place;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Level;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Unit;
import org.flitchbook.message.Argument;
import org.flitchbook.message.Message;
import org.flitchbook.message.Word;
import org.flitchbook.plan.Kind;
import org.flitchbook.sums.BandTime;
import org.flitchbook.sums.Shift;

/** Judges one probe in one stage of a span. */
final class StageJudge {

  private final JudgedLot judged;
  private final Kind.Stage stage;
  private final Track track;
  private final Optional<SpanJudge.WarmDrying> drying;
  private final Clock clock;
  private final Word probe;
  private final Argument from;
  private final Argument to;
  private final Argument atMost;

  /**
   * @param drying the hours that count in a rising stage
   */
  StageJudge(
      JudgedLot judged, Kind.Stage stage, Track track, Optional<SpanJudge.WarmDrying> drying) {
    this.judged = judged;
    this.stage = stage;
    this.track = track;
    this.drying = drying.filter(warm -> !stage.falling());
    this.clock = Clock.of(stage, track, this.drying);
    this.probe = JudgedLot.probe(track);
    this.from = stage.from().asWritten();
    this.to = stage.to().asWritten();
    this.atMost = stage.atMost().asWritten();
  }

  Outcome judge() {
    return switch (clock.written().state()) {
      case DONE -> measured(clock.isMet() ? Outcome.met() : crossed());
      case RUNNING -> measured(running());
      case BEFORE -> unmeasured(before());
      case BEGINS_INSIDE ->
          unmeasured(
              isLogToCome() ? Outcome.pending(beginsLate()) : Outcome.notShown(beginsLate()));
    };
  }

  /** Until the chill is over, a log that saw the beginning may still be in the meat. */
  private boolean isLogToCome() {
    return track.interval() == 0 && !judged.coreIsOver();
  }

  private Message beginsLate() {
    boolean beyond = !stage.falling() && track.level(0, Shift.AS_WRITTEN) >= Level.of(stage.to());
    return beyond
        ? say(
            "check.span.begins-beyond",
            "the readings of {0} begin at {1}, above the band, and no reading by hand shows it"
                + " below",
            probe,
            level(0))
        : say(
            "check.span.begins-inside",
            "the readings of {0} begin at {1}, inside the band, and no reading by hand shows its"
                + " beginning",
            probe,
            level(0));
  }

  /** As written both crossings were seen, yet the worst case misses. */
  private Outcome crossed() {
    return clock.kindest() > clock.limit()
        ? Outcome.notMet(
            say("check.span.too-long", "{0}, of at most {1}", took(clock.kindest()), atMost))
        : Outcome.notShown(whyInDoubt());
  }

  private Message whyInDoubt() {
    if (clock.isMissedByDryingAlone()) {
      return say(
          "check.span.drying-open",
          "the readings of the drying allow from {0} to {1} that count in it",
          minutes(clock.leastDrying()),
          minutes(clock.mostDrying()));
    }
    return clock.written().gap()
        ? say(
            "check.span.crossing-in-gap",
            "a crossing lies in a gap of the log: anything from {0} to {1} is possible",
            minutes(clock.written().shortest()),
            minutes(clock.worse().longest()))
        : say(
            "check.span.only-as-written",
            "only the curve as written meets it ({0}); with the instrument's error against the lot"
                + " it does not",
            minutes(clock.kindest()));
  }

  private Outcome running() {
    long seen = clock.written().shortest();
    if (seen > clock.limit()) {
      return Outcome.notMet(
          say("check.span.too-long-so-far", "{0} so far, of at most {1}", took(seen), atMost));
    }
    if (judged.coreIsOver()) {
      return Outcome.notShown(
          say(
              "check.span.never-shown",
              "the readings of {0} end at {1} and never show {2}",
              probe,
              level(track.size() - 1),
              to));
    }
    long running = judged.moment().toEpochMilli() - track.latest(clock.written().start());
    return running + clock.mostDrying() > clock.limit()
        ? Outcome.notShown(
            say("check.span.run-out", "its time has run out and no reading shows {0}", to))
        : Outcome.pending(say("check.span.still-between", "still between {0} and {1}", from, to));
  }

  private Outcome before() {
    if (!judged.coreIsOver()) {
      return Outcome.pending(
          say("check.span.not-entered", "{0} has not entered the band yet", probe));
    }
    return Outcome.notShown(
        stage.falling()
            ? say("check.span.never-falls", "the readings of {0} never fall below {1}", probe, from)
            : say(
                "check.span.never-rises", "the readings of {0} never rise above {1}", probe, from));
  }

  private Argument took(long millis) {
    Message time =
        say(
            "check.span.took",
            "{0}: at least {1} from {2} to {3}",
            probe,
            minutes(millis),
            from,
            to);
    return clock.leastDrying() > 0 ? counted(time) : time;
  }

  /** With the hours of the drying that count in it. */
  private Argument counted(Argument time) {
    return drying.map(warm -> warm.counted(time)).orElse(time);
  }

  private Outcome measured(Outcome outcome) {
    BandTime shown = clock.shown();
    Message quantity = say("check.span.what", "{0} from {1} to {2}", track.what(), from, to);
    Measured measured =
        Measured.of(quantity, minutes(clock.value()), true, stage.atMost())
            .interpolated(clock.written().interpolated().map(StageJudge::minutes));
    int last = stage.falling() ? track.size() - 1 : shown.end();
    return inPart(outcome.measured(measured, formula(shown)), Optional.of(shown))
        .from(evidence(shown), Dependency.on(track, shown.start(), last));
  }

  private Outcome unmeasured(Outcome outcome) {
    return inPart(outcome, Optional.empty())
        .from(List.of(track.place(0), track.place(track.size() - 1)), Dependency.on(track));
  }

  private Outcome inPart(Outcome outcome, Optional<BandTime> shown) {
    Part part =
        new Part(
            stage.from(),
            stage.to(),
            outcome.verdict(),
            outcome.measured(),
            track.probes(),
            shown.map(time -> Instant.ofEpochMilli(track.earliest(time.start()))),
            shown.map(time -> Instant.ofEpochMilli(track.latest(time.end()))),
            outcome.reasons());
    return outcome.parts(List.of(part));
  }

  private Message formula(BandTime shown) {
    return say(
        "check.span.formula",
        "{0}: from {1} ({2}) to {3} ({4}), ± {5}: {6}",
        say("check.span.what", "{0} from {1} to {2}", probe, from, to),
        judged.clock(track.earliest(shown.start())),
        level(shown.start()),
        judged.clock(track.latest(shown.end())),
        level(shown.end()),
        counted(judged.error(track, shown.start(), Shift.UP)),
        minutes(clock.value()));
  }

  private Quantity level(int index) {
    return judged.level(track, index);
  }

  private static Quantity minutes(long millis) {
    return JudgedLot.time(millis, Unit.MINUTE);
  }

  /** The readings on both sides of each crossing. */
  private List<Place> evidence(BandTime shown) {
    return IntStream.of(
            shown.start(),
            Math.min(shown.start() + 1, track.size() - 1),
            Math.max(shown.end() - 1, 0),
            shown.end())
        .sorted()
        .distinct()
        .mapToObj(track::place)
        .toList();
  }

  /**
   * The times in the band, all in ms: as written, and with the uncertainty added and taken away.
   * The warm hours of the drying are counted in each of them.
   */
  private record Clock(
      BandTime written, BandTime up, BandTime down, long limit, long mostDrying, long leastDrying) {

    static Clock of(Kind.Stage stage, Track track, Optional<SpanJudge.WarmDrying> drying) {
      long from = Level.of(stage.from());
      long to = Level.of(stage.to());
      long most = drying.map(SpanJudge.WarmDrying::most).orElse(0L);
      long least = drying.map(SpanJudge.WarmDrying::least).orElse(0L);
      Function<Shift, BandTime> inBand =
          stage.falling()
              ? shift -> BandTime.falling(track, shift, from, to)
              : shift -> BandTime.rising(track, shift, from, to).plus(most, least);
      return new Clock(
          inBand.apply(Shift.AS_WRITTEN),
          inBand.apply(Shift.UP),
          inBand.apply(Shift.DOWN),
          JudgedLot.millis(stage.atMost()),
          most,
          least);
    }

    /** Whether the curve meets the stage as written and with its uncertainty either way. */
    boolean isMet() {
      return Stream.of(written, up, down)
          .allMatch(time -> time.state() == BandTime.State.DONE && time.longest() <= limit);
    }

    /** The clock that is printed: the worse one where both crossings were seen, else as written. */
    BandTime shown() {
      return written.state() == BandTime.State.DONE ? worse() : written;
    }

    /** What is printed of it: the longest where both crossings were seen, else the least. */
    long value() {
      return written.state() == BandTime.State.DONE ? worse().longest() : written.shortest();
    }

    /** The shifted curve that counts: the one that takes longer, running before done. */
    BandTime worse() {
      if (up.state() != down.state()) {
        return up.state() == BandTime.State.RUNNING ? up : down;
      }
      return up.longest() >= down.longest() ? up : down;
    }

    /** The least that the readings allow: straight lines, and less where a gap hides more. */
    long kindest() {
      long lines = written.interpolated().orElse(written.longest());
      return written.gap() ? Math.min(lines, written.shortest()) : lines;
    }

    /** Whether the stage is missed only by hours of the drying that may or may not have been. */
    boolean isMissedByDryingAlone() {
      return mostDrying > leastDrying && written.longest() - mostDrying + leastDrying <= limit;
    }
  }
}
