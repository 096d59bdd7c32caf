package org.flitchbook.check;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.flitchbook.input.Place;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Level;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Unit;
import org.flitchbook.plan.Kind;
import org.flitchbook.reading.Entry;
import org.flitchbook.reading.Moment;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;
import org.flitchbook.sums.Shift;

/**
 * Judges a part of the cooking time under a condition; any option serves. The cooking time is
 * counted from into to out of smoke, which is never shorter than to the lethal pair, so that the
 * part asked for is never too small.
 */
final class ShareJudge {

  private final Case judged;
  private final Kind.Share share;

  ShareJudge(Case judged, Kind.Share share) {
    this.judged = judged;
    this.share = share;
  }

  Outcome judge() {
    Optional<Outcome> without = judged.withoutStep(Step.SMOKE);
    if (without.isPresent()) {
      return without.get();
    }
    List<Outcome> options = new ArrayList<>();
    for (Kind.Option option : share.options()) {
      new Tried(option).outcome().ifPresent(options::add);
    }
    if (options.isEmpty()) {
      return judged.missing(Step.SMOKE, "no humidity, steam or sealed oven is on record");
    }
    return options.stream().reduce(ShareJudge::better).orElseThrow();
  }

  private static Outcome better(Outcome a, Outcome b) {
    return a.verdict().isWorseThan(b.verdict()) ? b : a;
  }

  /** One option against what is on record. */
  private final class Tried {

    private final Kind.Option option;
    private final Moment into = judged.lot().stay(Step.SMOKE).orElseThrow().into().time();
    private final Moment end = judged.endOf(Step.SMOKE);

    Tried(Kind.Option option) {
      this.option = option;
    }

    /** Empty where nothing of the option's kind was recorded. */
    Optional<Outcome> outcome() {
      return option.on() ? switched() : levelled();
    }

    private Optional<Outcome> switched() {
      List<Entry> entries = judged.lot().all(option.what());
      if (entries.isEmpty()) {
        return Optional.empty();
      }
      Duration sum = Duration.ZERO;
      for (int i = 0; i < entries.size(); i++) {
        if (entries.get(i).value().equalsIgnoreCase("on")) {
          Moment until = i + 1 < entries.size() ? entries.get(i + 1).time() : end;
          sum = sum.plus(positive(entries.get(i).time().shortestTo(until)));
        }
      }
      return Optional.of(judge(sum, sum, entries.stream().map(Entry::place).toList()));
    }

    private Optional<Outcome> levelled() {
      List<Track> tracks = judged.lot().tracks(option.what(), Step.SMOKE);
      return tracks.stream()
          .flatMap(track -> track.ways().stream())
          .map(this::levelled)
          .reduce(Outcome::orWorse);
    }

    private Outcome levelled(Track track) {
      int[] run = ends(track);
      return judge(
          under(track, Shift.DOWN),
          under(track, Shift.AS_WRITTEN),
          List.of(track.place(run[0]), track.place(run[1])));
    }

    /** The first and the last reading that fulfil the condition; else the highest, twice. */
    private int[] ends(Track track) {
      long wanted = Level.of(option.level().orElseThrow());
      int first = -1;
      int last = -1;
      int highest = 0;
      for (int i = 0; i < track.size(); i++) {
        if (track.level(i, Shift.DOWN) >= wanted) {
          first = first < 0 ? i : first;
          last = i;
        }
        highest = track.level(i, Shift.DOWN) > track.level(highest, Shift.DOWN) ? i : highest;
      }
      return first < 0 ? new int[] {highest, highest} : new int[] {first, last};
    }

    private Duration under(Track track, Shift shift) {
      long wanted = Level.of(option.level().orElseThrow());
      long sum = 0;
      for (int i = 0; i + 1 < track.size(); i++) {
        if (track.level(i, shift) >= wanted
            && track.level(i + 1, shift) >= wanted
            && !track.gapAfter(i)) {
          sum += track.earliest(i + 1) - track.earliest(i);
        }
      }
      return Duration.ofMillis(sum);
    }

    private Outcome judge(Duration sure, Duration written, List<Place> evidence) {
      Quantity cooking = Case.time(into.longestTo(end), Unit.MINUTE);
      Quantity wanted = wanted(cooking);
      Quantity held = Case.time(sure, Unit.MINUTE);
      String name = option.name();
      Measured measured = Measured.of(name + ", time under it", held, false, wanted);
      String formula =
          name
              + ": "
              + held.shown()
              + " of "
              + cooking.shown()
              + " in the smoke; wanted "
              + wanted.shown();
      return verdict(held, Case.time(written, Unit.MINUTE), wanted)
          .measured(measured, formula)
          .from(evidence);
    }

    private Quantity wanted(Quantity cooking) {
      Quantity part = new Quantity(cooking.value().times(option.share().inBase()), cooking.unit());
      return option
          .atLeast()
          .map(least -> least.in(cooking.unit()))
          .filter(least -> least.isAbove(part))
          .orElse(part);
    }

    private Outcome verdict(Quantity held, Quantity written, Quantity wanted) {
      Optional<String> lacks = lacks();
      if (!held.isBelow(wanted) && lacks.isEmpty()) {
        return Outcome.of(Verdict.MET, "");
      }
      if (judged.phase(Step.SMOKE) == Case.Phase.RUNNING) {
        return Outcome.pending(option.name() + " is not fulfilled so far");
      }
      String why = lacks.orElse(held.shown() + " of at least " + wanted.shown());
      boolean asWritten = lacks.isEmpty() && !written.isBelow(wanted);
      return Outcome.of(
          asWritten ? Verdict.NOT_SHOWN : Verdict.NOT_MET, option.name() + ": " + why);
    }

    /** What the option asks for beside the time under its condition. */
    private Optional<String> lacks() {
      Duration least = into.shortestTo(end);
      Optional<String> cooking =
          option
              .cooking()
              .filter(wanted -> Case.time(least, Unit.SECOND).isBelow(wanted))
              .map(wanted -> "the cooking time is below " + wanted);
      return cooking.or(() -> option.endpoint().flatMap(this::endpoint));
    }

    private Optional<String> endpoint(Quantity wanted) {
      List<Track> tracks = judged.lot().tracks(What.INTERNAL_TEMPERATURE, Step.SMOKE);
      boolean all = !tracks.isEmpty() && tracks.stream().allMatch(track -> reaches(track, wanted));
      return all ? Optional.empty() : Optional.of("not every probe surely reached " + wanted);
    }

    private boolean reaches(Track track, Quantity wanted) {
      long level = Level.of(wanted);
      for (int i = 0; i < track.size(); i++) {
        if (track.level(i, Shift.DOWN) >= level) {
          return true;
        }
      }
      return false;
    }

    private static Duration positive(Duration time) {
      return time.isNegative() ? Duration.ZERO : time;
    }
  }
}
