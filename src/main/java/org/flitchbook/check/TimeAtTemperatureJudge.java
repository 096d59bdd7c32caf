package org.flitchbook.check;

import static org.flitchbook.message.Message.say;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.flitchbook.input.Place;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Level;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.measure.Unit;
import org.flitchbook.message.Message;
import org.flitchbook.plan.Kind;
import org.flitchbook.sheet.Step;
import org.flitchbook.sums.HeldTime;
import org.flitchbook.sums.Shift;

/**
 * Judges one unbroken run at or above a row's temperature, in the heat, each probe alone with its
 * uncertainty taken away. Any row serves.
 */
record TimeAtTemperatureJudge(JudgedLot judged, Kind.TimeAtTemperature table) {

  Outcome judge() {
    List<Track> tracks = judged.heated(table.what());
    return tracks.isEmpty()
        ? judged.withoutCore(Step.SMOKE)
        : judged
            .withoutStep(Step.SMOKE)
            .orElseGet(
                () ->
                    Outcome.worstOfAll(
                            tracks.stream().map(track -> new Probe(track).outcome()).toList())
                        .beside(Dependency.lookedAt(tracks)));
  }

  /** A row with the run that came nearest to it, and how long that was in ms. */
  private record Tried(Kind.Hold row, HeldTime held, long time) {

    /** For 0 s one reading is not enough: it may be mistyped, or of a probe that is off. */
    boolean serves() {
      if (row.time().value().signum() == 0) {
        return held.readings() >= 2;
      }
      return !JudgedLot.time(time, Unit.SECOND).isBelow(row.time());
    }

    /** The part of the row's time that was held; a row of 0 s has all or nothing. */
    Ratio part() {
      return row.time().value().signum() == 0
          ? serves() ? Ratio.of(2) : Ratio.ZERO
          : Ratio.of(time, 1000).over(row.time().inBase());
    }
  }

  private final class Probe {

    private final Track track;
    private final long from =
        judged.lot().stay(Step.SMOKE).orElseThrow().into().time().earliest().toEpochMilli();
    private final long until = judged.endOf(Step.SMOKE).earliest().toEpochMilli();

    Probe(Track track) {
      this.track = track;
    }

    private Tried nearest(Shift shift) {
      return table.rows().stream()
          .map(row -> tried(row, shift))
          .max(Comparator.comparing(Tried::part))
          .orElseThrow();
    }

    /** As written a minute is its beginning; against the lot, its worse bound. */
    private Tried tried(Kind.Hold row, Shift shift) {
      HeldTime held = HeldTime.of(track, shift, Level.of(row.atLeast()), from, until);
      long written = track.earliest(held.end()) - track.earliest(held.start());
      return new Tried(row, held, shift == Shift.AS_WRITTEN ? written : held.longest());
    }

    Outcome outcome() {
      Tried sure = nearest(Shift.DOWN);
      return compared(sure)
          .measured(measured(sure), formula(sure))
          .from(evidence(sure.held()), dependsOn(sure));
    }

    private Outcome compared(Tried sure) {
      if (sure.serves()) {
        return Outcome.met();
      }
      if (judged.phase(Step.SMOKE) == JudgedLot.Phase.RUNNING) {
        return Outcome.pending(say("check.table.none-so-far", "no row is reached so far"));
      }
      Tried written = nearest(Shift.AS_WRITTEN);
      return written.serves()
          ? Outcome.notShown(onlyAsWritten(written))
          : oneByHand()
              .map(row -> Outcome.notShown(oneByHand(row)))
              .orElseGet(() -> Outcome.notMet(tooShort(sure.row())));
    }

    /** The row of 0 s that one reading by hand would meet. */
    private Optional<Kind.Hold> oneByHand() {
      return table.rows().stream()
          .filter(row -> row.time().value().signum() == 0)
          .map(row -> tried(row, Shift.AS_WRITTEN))
          .filter(each -> each.held().readings() == 1 && each.held().byHand())
          .map(Tried::row)
          .findFirst();
    }

    private Message oneByHand(Kind.Hold row) {
      return say(
          "check.table.one-by-hand",
          "{0}: one reading by hand at or above {1}; {2} there takes two readings, or its check"
              + " with another instrument",
          JudgedLot.probe(track),
          row.atLeast().asWritten(),
          row.time().asWritten());
    }

    private Message onlyAsWritten(Tried written) {
      Kind.Hold row = written.row();
      return say(
          "check.table.only-as-written",
          "only the curve as written meets a row ({0} at {1}); with the instrument's error and the"
              + " seconds that nobody wrote against the lot none is met",
          JudgedLot.time(written.time(), row.time().unit()),
          row.atLeast().asWritten());
    }

    private Message tooShort(Kind.Hold row) {
      return say(
          "check.table.short",
          "{0}: short on every row; {1}, nearest is {2} at {3}",
          JudgedLot.probe(track),
          peak(),
          row.time().asWritten(),
          row.atLeast().asWritten());
    }

    private Message peak() {
      OptionalInt peak = hottest();
      return peak.isPresent()
          ? say("check.table.peak", "it peaks at {0}", judged.level(track, peak.getAsInt()))
          : say("check.table.no-reading", "no reading in the heat");
    }

    /** The first of the highest readings in the heat. */
    private OptionalInt hottest() {
      return track.farthest(
          Shift.AS_WRITTEN, true, i -> track.earliest(i) >= from && track.earliest(i) <= until);
    }

    private Measured measured(Tried tried) {
      Kind.Hold row = tried.row();
      return Measured.of(
          say("check.table.time-at", "time at or above {0}", row.atLeast().asWritten()),
          value(tried),
          false,
          row.time());
    }

    private Quantity value(Tried tried) {
      return JudgedLot.time(tried.held().longest(), tried.row().time().unit());
    }

    /** The run that serves; where none does, whatever was read. */
    private List<Dependency> dependsOn(Tried tried) {
      return tried.serves()
          ? Dependency.on(track, tried.held().start(), tried.held().end())
          : Dependency.on(track);
    }

    /** Both ends of the run; where there is none, the reading that came nearest. */
    private List<Place> evidence(HeldTime held) {
      return held.readings() > 0
          ? List.of(track.place(held.start()), track.place(held.end()))
          : hottest().stream().mapToObj(track::place).toList();
    }

    private Message formula(Tried tried) {
      HeldTime held = tried.held();
      boolean ran = held.readings() > 0;
      return say(
          "check.table.formula",
          "{0} − {1} at or above {2}: {3} {4}",
          JudgedLot.probe(track),
          judged.error(track, ran ? held.start() : hottest().orElse(0), Shift.DOWN),
          tried.row().atLeast().asWritten(),
          value(tried),
          ran ? ran(held) : say("check.table.one-run", "in one run"));
    }

    private Message ran(HeldTime held) {
      return say(
          "check.table.one-run-from",
          "in one run, from {0} to {1}",
          judged.clock(track.earliest(held.start())),
          judged.clock(track.earliest(held.end())));
    }
  }
}
