package org.flitchbook.doubt;

import static org.flitchbook.message.Message.say;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.json.Choice;
import org.flitchbook.json.Key;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Level;
import org.flitchbook.measure.Quantity;
import org.flitchbook.plan.Figure;
import org.flitchbook.plan.Kind;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;
import org.flitchbook.sums.Shift;

/** The smoker's air. */
sealed interface SmokerRule extends Finder
    permits SmokerRule.LidOpen, SmokerRule.FireOut, SmokerRule.DryThoughMoist {

  /**
   * The smoker's air falls fast and soon comes back.
   *
   * @param fall it falls by more than this
   * @param in within this time
   * @param back it has come back where it is at most so far below where it was
   * @param within so soon after it had fallen
   */
  @Choice("lid open")
  record LidOpen(Degrees fall, Duration in, Degrees back, Duration within) implements SmokerRule {

    @Override
    public Stream<Doubt> find(Subject subject) {
      return subject.air(Step.SMOKE).logs().stream().flatMap(this::find);
    }

    private Stream<Doubt> find(ProbeLog air) {
      List<Doubt> doubts = new ArrayList<>();
      for (int i = 0; i < air.last(); i++) {
        int before = i;
        int low = first(air, i, in, at -> -air.rise(before, at) > fall.difference());
        int again =
            low == 0
                ? 0
                : first(air, low, within, at -> -air.rise(before, at) <= back.difference());
        if (again > 0) {
          doubts.add(doubt(air, i, again));
          i = again;
        }
      }
      return doubts.stream();
    }

    /** The first reading from one on, within a time, for which a test holds; 0 if none. */
    private static int first(ProbeLog air, int from, Duration within, IntPredicate test) {
      return IntStream.range(from, air.size())
          .takeWhile(i -> air.between(from, i) <= within.toMillis())
          .filter(test)
          .findFirst()
          .orElse(0);
    }

    private Doubt doubt(ProbeLog air, int before, int again) {
      return new Doubt(
          air.place(before),
          say(
              "doubt.lid.found",
              "the smoker's air fell from {0} and was back to {1}",
              air.said(before),
              air.said(again)),
          say("doubt.lid.expected", "a closed smoker"),
          say("do.lid-open", "Keep it short."));
    }
  }

  /**
   * The smoker's air falls far and does not come back before the core is where it should be.
   *
   * @param fall it is below its hottest by more than this
   * @param keptFor for so long
   */
  @Choice("fire out")
  record FireOut(Degrees fall, Duration keptFor) implements SmokerRule {

    @Override
    public Stream<Doubt> find(Subject subject) {
      Stream<Long> wanted = subject.limits().flatMap(FireOut::wanted).map(Level::of);
      return wanted.max(Comparator.naturalOrder()).stream()
          .flatMap(target -> find(subject, target));
    }

    private Stream<Doubt> find(Subject subject, long target) {
      return subject.air(Step.SMOKE).logs().stream()
          .flatMap(
              air ->
                  died(air).stream()
                      .filter(i -> isBelow(subject, air.at(i), target))
                      .mapToObj(i -> doubt(subject, air, i, target)));
    }

    /** What a limit asks of the core in the heat. */
    private static Stream<Quantity> wanted(Kind kind) {
      if (kind instanceof Kind.Bound bound
          && bound.figure() == Figure.PEAK_INTERNAL_TEMPERATURE
          && !bound.ceiling()) {
        return Stream.of(bound.limit());
      }
      return kind instanceof Kind.Span span && span.what() == What.INTERNAL_TEMPERATURE
          ? span.stages().stream().filter(stage -> !stage.falling()).map(Kind.Stage::to)
          : Stream.of();
    }

    /** The first reading that is so far below the hottest before it, and stays there. */
    private OptionalInt died(ProbeLog air) {
      int hottest = 0;
      for (int i = 0; i < air.size(); i++) {
        hottest = air.level(i) > air.level(hottest) ? i : hottest;
        if (isOut(air, hottest, i)) {
          return OptionalInt.of(i);
        }
      }
      return OptionalInt.empty();
    }

    private boolean isOut(ProbeLog air, int hottest, int from) {
      return IntStream.range(from, air.size())
          .takeWhile(i -> air.rise(i, hottest) > fall.difference())
          .anyMatch(i -> air.between(from, i) >= keptFor.toMillis());
    }

    private static boolean isBelow(Subject subject, long at, long target) {
      return subject.cores().stream()
          .map(core -> IntStream.rangeClosed(0, core.atOrBefore(at)).mapToLong(core::level).max())
          .flatMapToLong(OptionalLong::stream)
          .anyMatch(hottest -> hottest < target);
    }

    private Doubt doubt(Subject subject, ProbeLog air, int index, long target) {
      return new Doubt(
          air.place(index),
          say(
              "doubt.fire.found",
              "the smoker's air is down to {0} and stays there",
              air.said(index)),
          say("doubt.fire.expected", "a fire until the core is at {0}", subject.shown(target)),
          say("do.fire-out", "Say what was done, and what became of the lot."));
    }
  }

  /**
   * Steam that was said to go in, or an oven that was said to be sealed, while the humidity was
   * read as that of dry air.
   *
   * @param below what was read, as wet as it can have been, is below this
   * @param after so long after it was switched on, and later
   * @param keptFor for less than this a log may be, as with an open door
   */
  @Choice("dry though steamed or sealed")
  record DryThoughMoist(
      @Key(dimension = Dimension.SHARE) Quantity below, Duration after, Duration keptFor)
      implements SmokerRule {

    /** An entry that says on, and when the next one ended that. */
    private record Switched(Entry on, long until) {}

    @Override
    public Stream<Doubt> find(Subject subject) {
      return Stream.of(What.STEAM, What.OVEN_SEALED)
          .flatMap(what -> switched(subject, what))
          .flatMap(on -> find(subject, on).stream());
    }

    private static Stream<Switched> switched(Subject subject, What what) {
      List<Entry> entries = subject.lot().all(what);
      long end = subject.endOf(Step.SMOKE).orElse(Long.MAX_VALUE);
      return IntStream.range(0, entries.size())
          .filter(i -> entries.get(i).value().equalsIgnoreCase("on"))
          .mapToObj(
              i ->
                  new Switched(
                      entries.get(i),
                      i + 1 < entries.size()
                          ? entries.get(i + 1).time().earliest().toEpochMilli()
                          : end));
    }

    /** About the first time that is too dry; a reading by hand is enough. */
    private Optional<Doubt> find(Subject subject, Switched on) {
      return subject.lot().tracks(What.HUMIDITY, Step.SMOKE).stream()
          .flatMap(
              track ->
                  Run.where(track.size(), i -> isDry(on, track, i))
                      .filter(run -> track.interval() == 0 || isKept(track, run))
                      .map(run -> doubt(subject, on, track, run.first())))
          .findFirst();
    }

    private boolean isDry(Switched on, Track track, int index) {
      return isDuring(on, track.earliest(index)) && track.level(index, Shift.UP) < Level.of(below);
    }

    private boolean isKept(Track track, Run run) {
      return track.earliest(run.last()) - track.earliest(run.first()) >= keptFor.toMillis();
    }

    private boolean isDuring(Switched on, long at) {
      return at >= on.on().time().latest().toEpochMilli() + after.toMillis() && at < on.until();
    }

    private Doubt doubt(Subject subject, Switched on, Track track, int index) {
      return new Doubt(
          on.on().place(),
          say(
              "doubt.dry.found",
              "{0} on, and humidity of {1} at {2} ({3})",
              on.on().what(),
              Level.quantity(track.level(index, Shift.AS_WRITTEN), below.unit()),
              subject.clock(track.earliest(index)),
              track.place(index)),
          say(
              "doubt.dry.expected",
              "humidity of at least {0} from {1} after it was switched on",
              below.asWritten(),
              Subject.length(after)),
          say(
              "do.dry-though-steamed-or-sealed",
              "Look at the damper, the steam and the sensor, and correct the entry that is"
                  + " wrong."));
    }
  }
}
