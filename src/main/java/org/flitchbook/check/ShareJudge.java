package org.flitchbook.check;

import static org.flitchbook.message.Message.say;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
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
import org.flitchbook.sums.Shift;

/**
 * Judges a part of the cooking time under a condition; any option serves. The cooking time is
 * counted from into to out of smoke, which is never shorter than to the lethal pair, so that the
 * part asked for is never too small.
 */
final class ShareJudge {

  private final JudgedLot judged;
  private final Kind.Share share;

  ShareJudge(JudgedLot judged, Kind.Share share) {
    this.judged = judged;
    this.share = share;
  }

  Outcome judge() {
    Optional<Outcome> without = judged.withoutStep(Step.SMOKE);
    return without.orElseGet(
        () ->
            share.options().stream()
                .flatMap(option -> new Tried(option).outcome().stream())
                .reduce(ShareJudge::better)
                .orElseGet(() -> judged.missing(Step.SMOKE, nothing())));
  }

  private static Message nothing() {
    return say("check.share.nothing", "no humidity, steam or sealed oven is on record");
  }

  private static Outcome better(Outcome a, Outcome b) {
    return a.verdict().isWorseThan(b.verdict()) ? b : a;
  }

  /** Readings from one index to another. */
  private record Run(int first, int last) {}

  /**
   * A time under the condition, all in ms.
   *
   * @param from as written, as is {@code to}
   * @param sure the shortest that it can have been
   */
  private record Held(long from, long to, long sure) {

    static Held between(Moment from, Moment to) {
      return new Held(
          from.earliest().toEpochMilli(),
          to.earliest().toEpochMilli(),
          from.shortestTo(to).toMillis());
    }

    static Quantity sure(List<Held> all) {
      return sum(all.stream().mapToLong(Held::sure));
    }

    static Quantity written(List<Held> all) {
      return sum(all.stream().mapToLong(each -> each.to - each.from));
    }

    private static Quantity sum(LongStream times) {
      return JudgedLot.time(times.map(time -> Math.max(0, time)).sum(), Unit.MINUTE);
    }
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

    /** From each "on" to the next entry, as far as the product was in the smoke. */
    private Optional<Outcome> switched() {
      List<Entry> entries = judged.lot().all(option.what());
      List<Held> held = new ArrayList<>();
      for (int i = 0; i < entries.size(); i++) {
        if (entries.get(i).value().equalsIgnoreCase("on")) {
          Moment off = i + 1 < entries.size() ? entries.get(i + 1).time() : end;
          Moment from = latest(entries.get(i).time(), into);
          held.add(Held.between(from, off.isBefore(end) ? off : end));
        }
      }
      List<Place> places = entries.stream().map(Entry::place).toList();
      return entries.isEmpty()
          ? Optional.empty()
          : Optional.of(from(judge(held, held), places, places.stream().map(Dependency::on)));
    }

    private static Moment latest(Moment a, Moment b) {
      return a.isBefore(b) ? b : a;
    }

    private Optional<Outcome> levelled() {
      List<Track> tracks = judged.lot().tracks(option.what(), Step.SMOKE);
      return tracks.stream()
          .flatMap(track -> track.ways().stream())
          .map(this::levelled)
          .reduce(Outcome::orWorse);
    }

    private Outcome levelled(Track track) {
      List<Run> sure = runs(track, Shift.DOWN);
      int highest = WorstReading.highest(track, Shift.DOWN, i -> true).orElseThrow();
      List<Place> evidence =
          sure.isEmpty()
              ? List.of(track.place(highest))
              : List.of(
                  track.place(sure.get(0).first()), track.place(sure.get(sure.size() - 1).last()));
      Outcome outcome = judge(held(track, sure), held(track, runs(track, Shift.AS_WRITTEN)));
      return from(outcome, evidence, Dependency.on(track).stream());
    }

    private Outcome from(Outcome outcome, List<Place> evidence, Stream<Dependency> dependsOn) {
      Stream<Dependency> ofCores =
          option.endpoint().isEmpty()
              ? Stream.of()
              : cores().stream().flatMap(track -> Dependency.on(track).stream());
      return outcome.from(evidence, Stream.concat(dependsOn, ofCores).toList());
    }

    private List<Track> cores() {
      return judged.lot().tracks(What.INTERNAL_TEMPERATURE, Step.SMOKE);
    }

    /** The readings that fulfil the condition, in runs without a gap. */
    private List<Run> runs(Track track, Shift shift) {
      long wanted = Level.of(option.level().orElseThrow());
      List<Run> runs = new ArrayList<>();
      for (int i = 0; i < track.size(); i++) {
        if (track.level(i, shift) >= wanted) {
          int first = i;
          while (!track.gapAfter(i)
              && i + 1 < track.size()
              && track.level(i + 1, shift) >= wanted) {
            i++;
          }
          runs.add(new Run(first, i));
        }
      }
      return runs;
    }

    private static List<Held> held(Track track, List<Run> runs) {
      return runs.stream()
          .map(
              run ->
                  new Held(
                      track.earliest(run.first()),
                      track.earliest(run.last()),
                      track.earliest(run.last()) - track.latest(run.first())))
          .toList();
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
      Duration least = into.shortestTo(end);
      Optional<Message> cooking =
          option
              .cooking()
              .filter(wanted -> JudgedLot.time(least, Unit.SECOND).isBelow(wanted))
              .map(
                  wanted ->
                      say(
                          "check.share.cooking-short",
                          "the cooking time is below {0}",
                          wanted.asWritten()));
      return cooking.or(() -> option.endpoint().flatMap(this::endpoint));
    }

    private Optional<Message> endpoint(Quantity wanted) {
      List<Track> tracks = cores();
      boolean all = !tracks.isEmpty() && tracks.stream().allMatch(track -> reaches(track, wanted));
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
