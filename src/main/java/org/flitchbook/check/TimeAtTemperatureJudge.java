package org.flitchbook.check;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.flitchbook.input.Place;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Level;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.measure.Unit;
import org.flitchbook.plan.Kind;
import org.flitchbook.sheet.Step;
import org.flitchbook.sums.HeldTime;
import org.flitchbook.sums.Shift;

/**
 * Judges one unbroken run at or above a row's temperature, in the heat, each probe alone with its
 * uncertainty taken away. Any row serves.
 */
final class TimeAtTemperatureJudge {

  private final Case judged;
  private final Kind.TimeAtTemperature table;

  TimeAtTemperatureJudge(Case judged, Kind.TimeAtTemperature table) {
    this.judged = judged;
    this.table = table;
  }

  Outcome judge() {
    Optional<Outcome> without = judged.withoutStep(Step.SMOKE);
    List<Track> tracks = judged.lot().tracks(table.what(), Step.SMOKE);
    if (without.isPresent()) {
      return without.get();
    }
    if (tracks.isEmpty()) {
      return judged.missing(Step.SMOKE, judged.noReading(table.what()));
    }
    return Outcome.worstOfAll(tracks.stream().map(track -> new Probe(track).outcome()).toList());
  }

  /** A row with the run that came nearest to it, and how long that was in ms. */
  private record Tried(Kind.Hold row, HeldTime held, long time) {

    boolean serves() {
      if (row.time().value().signum() == 0) {
        return held.readings() >= 2 || (held.readings() == 1 && held.byHand());
      }
      return !Case.time(time, Unit.SECOND).isBelow(row.time());
    }

    /** The part of the row's time that was held; a row of 0 s has all or nothing. */
    Ratio part() {
      return row.time().value().signum() == 0
          ? serves() ? Ratio.of(2) : Ratio.ZERO
          : Ratio.of(time, 1000).over(row.time().inBase());
    }

    Tried orNearer(Tried other) {
      return other.part().isAbove(part()) ? other : this;
    }
  }

  private final class Probe {

    private final Track track;
    private final long from;
    private final long until;

    Probe(Track track) {
      this.track = track;
      this.from =
          judged.lot().stay(Step.SMOKE).orElseThrow().into().time().earliest().toEpochMilli();
      this.until = judged.endOf(Step.SMOKE).earliest().toEpochMilli();
    }

    private Tried nearest(Shift shift) {
      return table.rows().stream()
          .map(row -> tried(row, shift))
          .reduce(Tried::orNearer)
          .orElseThrow();
    }

    /** As written a minute is its beginning; against the lot it is its worse end. */
    private Tried tried(Kind.Hold row, Shift shift) {
      HeldTime held = HeldTime.of(track, shift, Level.of(row.atLeast()), from, until);
      long written = track.earliest(held.end()) - track.earliest(held.start());
      return new Tried(row, held, shift == Shift.AS_WRITTEN ? written : held.longest());
    }

    Outcome outcome() {
      Tried sure = nearest(Shift.DOWN);
      if (sure.serves()) {
        return told(Verdict.MET, "", sure);
      }
      if (judged.phase(Step.SMOKE) == Case.Phase.RUNNING) {
        return told(
            Verdict.PENDING,
            judged.say("check.table.none-so-far", "no row is reached so far"),
            sure);
      }
      Tried written = nearest(Shift.AS_WRITTEN);
      return written.serves()
          ? told(Verdict.NOT_SHOWN, onlyAsWritten(written), sure)
          : told(Verdict.NOT_MET, tooShort(sure.row()), sure);
    }

    private String onlyAsWritten(Tried written) {
      Kind.Hold row = written.row();
      return judged.say(
          "check.table.only-as-written",
          "only the curve as written meets a row ({0} at {1}); with the instrument's error and the"
              + " seconds that nobody wrote against the lot none is met",
          Case.time(written.time(), row.time().unit()).shown(),
          row.atLeast());
    }

    private String tooShort(Kind.Hold row) {
      return judged.say(
          "check.table.short",
          "{0}: short on every row; {1}, nearest is {2} at {3}",
          judged.probe(track),
          peak(),
          row.time(),
          row.atLeast());
    }

    private String peak() {
      return hottest()
          .map(peak -> judged.say("check.table.peak", "it peaks at {0}", level(peak).shown()))
          .orElseGet(() -> judged.say("check.table.no-reading", "no reading in the heat"));
    }

    /** The first of the highest readings in the heat. */
    private Optional<Integer> hottest() {
      return IntStream.range(0, track.size())
          .filter(i -> track.earliest(i) >= from && track.earliest(i) <= until)
          .boxed()
          .reduce((first, next) -> level(next).isAbove(level(first)) ? next : first);
    }

    private Quantity level(int index) {
      Unit unit = judged.plan().establishment().temperature();
      return Level.quantity(track.level(index, Shift.AS_WRITTEN), unit);
    }

    private Outcome told(Verdict verdict, String reason, Tried tried) {
      Quantity value = Case.time(tried.held().longest(), tried.row().time().unit());
      Measured measured =
          Measured.of(
              judged.say("check.table.time-at", "time at or above {0}", tried.row().atLeast()),
              value,
              false,
              tried.row().time());
      return Outcome.of(verdict, reason)
          .measured(measured, formula(tried, value))
          .from(evidence(tried.held()), rests(tried));
    }

    /** The run that serves; where none does, whatever was read. */
    private List<Rest> rests(Tried tried) {
      return tried.serves()
          ? Rest.on(track, tried.held().start(), tried.held().end())
          : Rest.on(track);
    }

    /** Both ends of the run; where there is none, the reading that came nearest. */
    private List<Place> evidence(HeldTime held) {
      return held.readings() > 0
          ? List.of(track.place(held.start()), track.place(held.end()))
          : hottest().map(track::place).stream().toList();
    }

    private String formula(Tried tried, Quantity value) {
      Unit unit = judged.plan().establishment().temperature();
      int at = tried.held().readings() > 0 ? tried.held().start() : hottest().orElse(0);
      return judged.say(
          "check.table.formula",
          "{0} − {1} at or above {2}: {3} {4}",
          judged.probe(track),
          Shown.spread(track, at, Shift.DOWN, unit).shown(),
          tried.row().atLeast(),
          value.shown(),
          tried.held().readings() > 0
              ? ran(tried.held())
              : judged.say("check.table.one-run", "in one run"));
    }

    private String ran(HeldTime held) {
      return judged.say(
          "check.table.one-run-from",
          "in one run, from {0} to {1}",
          judged.clock(track.earliest(held.start())),
          judged.clock(track.earliest(held.end())));
    }
  }
}
