package org.flitchbook.check;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import org.flitchbook.input.Place;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Level;
import org.flitchbook.measure.Unit;
import org.flitchbook.plan.Kind;
import org.flitchbook.sums.BandTime;
import org.flitchbook.sums.Shift;

/** Judges one probe in one stage of a span, and tells what it found. */
final class StageJudge {

  private final Case judged;
  private final Kind.Span span;
  private final Kind.Stage stage;
  private final Track track;
  private final Optional<WarmDrying> drying;
  private final StageClock clock;

  /**
   * @param drying the hours that count in a rising stage
   */
  StageJudge(
      Case judged, Kind.Span span, Kind.Stage stage, Track track, Optional<WarmDrying> drying) {
    this.judged = judged;
    this.span = span;
    this.stage = stage;
    this.track = track;
    this.drying = drying.filter(warm -> !stage.falling());
    this.clock = new StageClock(stage, track, this.drying);
  }

  Clocked clocked() {
    if (clock.isMet()) {
      return told(Verdict.MET, "");
    }
    return switch (clock.written().state()) {
      case DONE -> crossed();
      case RUNNING -> running();
      case BEFORE -> before();
      case BEGINS_INSIDE ->
          none(
              Verdict.NOT_SHOWN,
              say(
                  "check.span.begins-inside",
                  "the readings of {0} begin at {1}, inside the band, and no reading by hand shows"
                      + " its beginning",
                  probe(),
                  level(0)));
    };
  }

  /** As written both crossings were seen, yet the worst case misses. */
  private Clocked crossed() {
    return clock.kindest() > clock.limit()
        ? told(
            Verdict.NOT_MET,
            say(
                "check.span.too-long",
                "{0}, of at most {1}",
                took(clock.kindest()),
                stage.atMost()))
        : told(Verdict.NOT_SHOWN, why());
  }

  private String why() {
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

  private Clocked running() {
    long seen = clock.written().shortest();
    if (seen > clock.limit()) {
      return told(
          Verdict.NOT_MET,
          say(
              "check.span.too-long-so-far",
              "{0} so far, of at most {1}",
              took(seen),
              stage.atMost()));
    }
    if (judged.coreIsOver()) {
      return told(
          Verdict.NOT_SHOWN,
          say(
              "check.span.never-shown",
              "the readings of {0} end at {1} and never show {2}",
              probe(),
              level(track.size() - 1),
              stage.to()));
    }
    long running = judged.moment().toEpochMilli() - track.latest(clock.written().start());
    return running + clock.mostDrying() > clock.limit()
        ? told(
            Verdict.NOT_SHOWN,
            say("check.span.run-out", "its time has run out and no reading shows {0}", stage.to()))
        : told(
            Verdict.PENDING,
            say("check.span.still-between", "still between {0} and {1}", stage.from(), stage.to()));
  }

  private Clocked before() {
    if (!judged.coreIsOver()) {
      return none(
          Verdict.PENDING,
          say("check.span.not-entered", "{0} has not entered the band yet", probe()));
    }
    return none(
        Verdict.NOT_SHOWN,
        stage.falling()
            ? say(
                "check.span.never-falls",
                "the readings of {0} never fall below {1}",
                probe(),
                stage.from())
            : say(
                "check.span.never-rises",
                "the readings of {0} never rise above {1}",
                probe(),
                stage.from()));
  }

  private String took(long millis) {
    String counted = clock.leastDrying() > 0 ? added() : "";
    return say(
            "check.span.took",
            "{0}: at least {1} from {2} to {3}",
            probe(),
            minutes(millis),
            stage.from(),
            stage.to())
        + counted;
  }

  private String say(String id, String english, Object... values) {
    return judged.say(id, english, values);
  }

  private String probe() {
    return judged.probe(track);
  }

  private String added() {
    return drying.map(WarmDrying::told).orElse("");
  }

  private Clocked told(Verdict verdict, String reason) {
    BandTime shown = clock.shown();
    Measured measured =
        Measured.of(
                say(
                    "check.span.what",
                    "{0} from {1} to {2}",
                    judged.what(span.what()),
                    stage.from(),
                    stage.to()),
                Case.time(clock.value(), Unit.MINUTE),
                true,
                stage.atMost())
            .interpolated(clock.written().interpolated().map(ms -> Case.time(ms, Unit.MINUTE)));
    Part part =
        new Part(
            stage.from(),
            stage.to(),
            verdict,
            Optional.of(measured),
            track.called(),
            Optional.of(Instant.ofEpochMilli(track.earliest(shown.start()))),
            Optional.of(Instant.ofEpochMilli(track.latest(shown.end()))),
            reason);
    int last = stage.falling() ? track.size() - 1 : shown.end();
    return new Clocked(part, formula(shown), evidence(shown), Rest.on(track, shown.start(), last));
  }

  private Clocked none(Verdict verdict, String reason) {
    Part part =
        new Part(
            stage.from(),
            stage.to(),
            verdict,
            Optional.empty(),
            track.called(),
            Optional.empty(),
            Optional.empty(),
            reason);
    List<Place> ends = List.of(track.place(0), track.place(track.size() - 1));
    return new Clocked(part, "", ends, Rest.on(track));
  }

  private String formula(BandTime shown) {
    Unit unit = judged.plan().establishment().temperature();
    String spread = Shown.spread(track, shown.start(), Shift.UP, unit).shown();
    return say(
        "check.span.formula",
        "{0}: from {1} ({2}) to {3} ({4}), ± {5}: {6}",
        say("check.span.what", "{0} from {1} to {2}", probe(), stage.from(), stage.to()),
        judged.clock(track.earliest(shown.start())),
        level(shown.start()),
        judged.clock(track.latest(shown.end())),
        level(shown.end()),
        spread + added(),
        minutes(clock.value()));
  }

  private String level(int index) {
    Unit unit = judged.plan().establishment().temperature();
    return Level.quantity(track.level(index, Shift.AS_WRITTEN), unit).shown();
  }

  private static String minutes(long millis) {
    return Case.time(millis, Unit.MINUTE).shown();
  }

  /** The readings on both sides of each crossing. */
  private List<Place> evidence(BandTime shown) {
    TreeSet<Integer> indices = new TreeSet<>();
    indices.add(shown.start());
    indices.add(Math.min(shown.start() + 1, track.size() - 1));
    indices.add(Math.max(shown.end() - 1, 0));
    indices.add(shown.end());
    return indices.stream().map(track::place).toList();
  }
}
