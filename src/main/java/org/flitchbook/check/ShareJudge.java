package org.flitchbook.check;

import static org.flitchbook.message.Message.say;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.ToLongFunction;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.input.Place;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Level;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Unit;
import org.flitchbook.message.Message;
import org.flitchbook.message.Word;
import org.flitchbook.plan.Kind;
import org.flitchbook.reading.Entry;
import org.flitchbook.reading.Moment;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;
import org.flitchbook.sums.Curve.Run;
import org.flitchbook.sums.Shift;

/**
 * Judges a part of the cooking time under a condition; any option serves. The cooking time is
 * counted from into to out of smoke, which is never shorter than to the lethal pair, so that the
 * part asked for is never too small.
 */
record ShareJudge(JudgedLot judged, Kind.Share share) {

  Outcome judge() {
    Message nothing = say("check.share.nothing", "no humidity, steam or sealed oven is on record");
    return judged
        .withoutStep(Step.SMOKE)
        .orElseGet(
            () ->
                share.options().stream()
                    .flatMap(option -> new Tried(option).outcome().stream())
                    .max(Comparator.comparing(Outcome::verdict))
                    .map(best -> best.beside(lookedAt()))
                    .orElseGet(() -> judged.missing(Step.SMOKE, nothing)));
  }

  /** What is on record for any option. */
  private Stream<Dependency> lookedAt() {
    return share.options().stream()
        .map(Kind.Option::what)
        .flatMap(
            what ->
                Stream.concat(
                    judged.entries(what),
                    Dependency.lookedAt(judged.lot().tracks(what, Step.SMOKE))));
  }

  /**
   * A time under the condition, all in ms.
   *
   * @param from as written, as is {@code to}
   * @param sure the shortest that it can have been
   */
  private record Held(long from, long to, long sure) {

    static Held during(Track track, Run run) {
      long from = track.earliest(run.first());
      long to = track.earliest(run.last());
      return new Held(from, to, to - track.latest(run.first()));
    }

    static Quantity sure(List<Held> all) {
      return sum(all, Held::sure);
    }

    static Quantity written(List<Held> all) {
      return sum(all, each -> each.to - each.from);
    }

    private static Quantity sum(List<Held> all, ToLongFunction<Held> time) {
      return JudgedLot.time(
          all.stream().mapToLong(time).map(each -> Math.max(0, each)).sum(), Unit.MINUTE);
    }
  }

  /** One option against what is on record. */
  private final class Tried {

    private final Kind.Option option;
    private final Moment into = judged.lot().stay(Step.SMOKE).orElseThrow().into().time();
    private final Moment end = judged.endOf(Step.SMOKE);
    private final List<Track> cores = judged.heated(What.INTERNAL_TEMPERATURE);

    Tried(Kind.Option option) {
      this.option = option;
    }

    /** Empty where nothing of the option's kind was recorded. */
    Optional<Outcome> outcome() {
      return option.on()
          ? Optional.of(judged.lot().all(option.what()))
              .filter(entries -> !entries.isEmpty())
              .map(this::switched)
          : judged.lot().tracks(option.what(), Step.SMOKE).stream()
              .flatMap(track -> track.ways().stream())
              .map(this::levelled)
              .min(Outcome.WORST_FIRST);
    }

    /** From each "on" to the next entry. */
    private Outcome switched(List<Entry> entries) {
      List<Held> held = new ArrayList<>();
      for (int i = 0; i < entries.size(); i++) {
        if (entries.get(i).value().equalsIgnoreCase("on")) {
          held.add(
              held(
                  entries.get(i).time(), i + 1 < entries.size() ? entries.get(i + 1).time() : end));
        }
      }
      List<Place> places = entries.stream().map(Entry::place).toList();
      return from(judge(held, held), places, places.stream().map(Dependency::on));
    }

    /** As far as the product was in the smoke. */
    private Held held(Moment on, Moment off) {
      Moment from = on.isBefore(into) ? into : on;
      Moment to = off.isBefore(end) ? off : end;
      return new Held(
          from.earliest().toEpochMilli(),
          to.earliest().toEpochMilli(),
          from.shortestTo(to).toMillis());
    }

    private Outcome levelled(Track track) {
      List<Run> sure = runs(track, Shift.DOWN);
      int highest = track.farthest(Shift.DOWN, true, i -> true).orElseThrow();
      List<Place> evidence =
          sure.isEmpty()
              ? List.of(track.place(highest))
              : List.of(
                  track.place(sure.get(0).first()), track.place(sure.get(sure.size() - 1).last()));
      Outcome outcome = judge(held(track, sure), held(track, runs(track, Shift.AS_WRITTEN)));
      return from(outcome, evidence, Dependency.on(track).stream());
    }

    /** The readings that fulfil the condition, in runs without a gap. */
    private List<Run> runs(Track track, Shift shift) {
      long wanted = Level.of(option.level().orElseThrow());
      return track.runs(i -> track.level(i, shift) >= wanted, track::gapAfter);
    }

    private static List<Held> held(Track track, List<Run> runs) {
      return runs.stream().map(run -> Held.during(track, run)).toList();
    }

    private Outcome from(Outcome outcome, List<Place> evidence, Stream<Dependency> dependsOn) {
      Stream<Dependency> ofCores =
          option.endpoint().stream()
              .flatMap(wanted -> cores.stream())
              .flatMap(track -> Dependency.on(track).stream());
      return outcome.from(evidence, Stream.concat(dependsOn, ofCores).toList());
    }

    private Outcome judge(List<Held> sure, List<Held> written) {
      Quantity cooking = JudgedLot.time(into.longestTo(end), Unit.MINUTE);
      Quantity wanted = wanted(cooking);
      Quantity held = Held.sure(sure);
      Message what = say("check.share.time-under", "{0}, time under it", name());
      return compared(held, Held.written(written), wanted)
          .measured(
              Measured.of(what, held, false, wanted),
              say(
                  "check.share.formula",
                  "{0}: {1}; wanted {2}",
                  name(),
                  formula(sure, cooking),
                  wanted));
    }

    private Word name() {
      return new Word("name", option.name());
    }

    private Message formula(List<Held> sure, Quantity cooking) {
      return say(
          "check.share.of",
          "{0} of {1} in the smoke, from {2} to {3}",
          sure.isEmpty() ? Held.sure(sure) : between(sure),
          cooking,
          judged.clock(into.earliest().toEpochMilli()),
          judged.clock(end.earliest().toEpochMilli()));
    }

    private Message between(List<Held> sure) {
      return say(
          "check.share.between",
          "{0} between {1} and {2}",
          Held.sure(sure),
          judged.clock(sure.get(0).from()),
          judged.clock(sure.get(sure.size() - 1).to()));
    }

    private Quantity wanted(Quantity cooking) {
      Quantity part = new Quantity(cooking.value().times(option.share().inBase()), cooking.unit());
      return option
          .atLeast()
          .map(least -> least.in(cooking.unit()))
          .filter(least -> least.isAbove(part))
          .orElse(part);
    }

    private Outcome compared(Quantity held, Quantity written, Quantity wanted) {
      Optional<Message> lacks = lacks();
      if (!held.isBelow(wanted) && lacks.isEmpty()) {
        return Outcome.met();
      }
      if (judged.phase(Step.SMOKE) == JudgedLot.Phase.RUNNING) {
        return Outcome.pending(
            say("check.share.not-so-far", "{0} is not fulfilled so far", name()));
      }
      Message why =
          lacks.orElseGet(() -> say("check.length.too-short", "{0} of at least {1}", held, wanted));
      Message reason = say("check.share.lacks", "{0}: {1}", name(), why);
      boolean asWritten = lacks.isEmpty() && !written.isBelow(wanted);
      return asWritten ? Outcome.notShown(reason) : Outcome.notMet(reason);
    }

    /** What the option asks for beside the time under its condition. */
    private Optional<Message> lacks() {
      Quantity least = JudgedLot.time(into.shortestTo(end), Unit.SECOND);
      return option
          .cooking()
          .filter(least::isBelow)
          .map(Quantity::asWritten)
          .map(wanted -> say("check.share.cooking-short", "the cooking time is below {0}", wanted))
          .or(() -> option.endpoint().flatMap(this::endpoint));
    }

    private Optional<Message> endpoint(Quantity wanted) {
      boolean all = !cores.isEmpty() && cores.stream().allMatch(track -> reaches(track, wanted));
      return all
          ? Optional.empty()
          : Optional.of(
              say(
                  "check.share.not-reached",
                  "not every probe surely reached {0}",
                  wanted.asWritten()));
    }

    private static boolean reaches(Track track, Quantity wanted) {
      long level = Level.of(wanted);
      return IntStream.range(0, track.size()).anyMatch(i -> track.level(i, Shift.DOWN) >= level);
    }
  }
}
