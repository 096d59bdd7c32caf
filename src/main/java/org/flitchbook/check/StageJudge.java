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
              "the readings of "
                  + track.called()
                  + " begin at "
                  + level(0)
                  + ", inside the band, and no reading by hand shows its beginning");
    };
  }

  /** As written both crossings were seen, yet the worst case misses. */
  private Clocked crossed() {
    return clock.kindest() > clock.limit()
        ? told(Verdict.NOT_MET, took(clock.kindest()) + ", of at most " + stage.atMost())
        : told(Verdict.NOT_SHOWN, why());
  }

  private String why() {
    if (clock.isMissedByDryingAlone()) {
      return "the readings of the drying allow from "
          + minutes(clock.leastDrying())
          + " to "
          + minutes(clock.mostDrying())
          + " that count in it";
    }
    return clock.written().gap()
        ? "a crossing lies in a gap of the log: anything from "
            + minutes(clock.written().shortest())
            + " to "
            + minutes(clock.worse().longest())
            + " is possible"
        : "only the curve as written meets it ("
            + minutes(clock.kindest())
            + "); with the instrument's error against the lot it does not";
  }

  private Clocked running() {
    long seen = clock.written().shortest();
    if (seen > clock.limit()) {
      return told(Verdict.NOT_MET, took(seen) + " so far, of at most " + stage.atMost());
    }
    if (judged.coreIsOver()) {
      return told(
          Verdict.NOT_SHOWN,
          "the readings of "
              + track.called()
              + " end at "
              + level(track.size() - 1)
              + " and never show "
              + stage.to());
    }
    long running = judged.moment().toEpochMilli() - track.latest(clock.written().start());
    return running + clock.mostDrying() > clock.limit()
        ? told(Verdict.NOT_SHOWN, "its time has run out and no reading shows " + stage.to())
        : told(Verdict.PENDING, "still between " + stage.from() + " and " + stage.to());
  }

  private Clocked before() {
    if (!judged.coreIsOver()) {
      return none(Verdict.PENDING, track.called() + " has not entered the band yet");
    }
    String enters = stage.falling() ? " never fall below " : " never rise above ";
    return none(Verdict.NOT_SHOWN, "the readings of " + track.called() + enters + stage.from());
  }

  private String took(long millis) {
    String counted = clock.leastDrying() > 0 ? added() : "";
    return track.called() + ": at least " + minutes(millis) + band() + counted;
  }

  private String band() {
    return " from " + stage.from() + " to " + stage.to();
  }

  private String added() {
    return drying.map(WarmDrying::told).orElse("");
  }

  private Clocked told(Verdict verdict, String reason) {
    BandTime shown = clock.shown();
    Measured measured =
        Measured.of(
                span.what().word() + band(),
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
    return new Clocked(part, formula(shown), evidence(shown));
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
    return new Clocked(part, "", List.of(track.place(0), track.place(track.size() - 1)));
  }

  private String formula(BandTime shown) {
    Unit unit = judged.plan().establishment().temperature();
    return track.called()
        + band()
        + ": from "
        + judged.clock(track.earliest(shown.start()))
        + " ("
        + level(shown.start())
        + ") to "
        + judged.clock(track.latest(shown.end()))
        + " ("
        + level(shown.end())
        + "), ± "
        + Shown.spread(track, shown.start(), Shift.UP, unit).shown()
        + added()
        + ": "
        + minutes(clock.value());
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
