package org.flitchbook.doubt;

import static org.flitchbook.input.Stretch.Standing.IN_DOUBT;
import static org.flitchbook.message.Message.say;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.json.Choice;
import org.flitchbook.sheet.Step;

/** A core beside the air around it. */
sealed interface CoreAirRule extends Finder {

  /**
   * A core that is as its air for some minutes, where no piece can have come so near to it yet:
   * soon after the load or the beginning of the chill, or soon after it was far from it.
   *
   * @param less it is as its air where it is less than this from it on average
   * @param keptFor for so long
   * @param afterStart so soon after the step began
   * @param afterFar or so soon after it was far from the air
   * @param far that is, more than this
   */
  @Choice("core equals air")
  record CoreLikeAir(
      Degrees less, Duration keptFor, Duration afterStart, Duration afterFar, Degrees far)
      implements CoreAirRule {

    @Override
    public Stream<Doubt> find(Subject subject, ProbeLog core) {
      return Stream.of(Step.SMOKE, Step.CHILL)
          .filter(step -> subject.into(step).isPresent())
          .flatMap(step -> new InStep(subject, core, step).find().stream());
    }

    /** A core beside its air in one step. */
    private final class InStep {

      private final ProbeLog core;
      private final boolean heats;
      private final long start;
      private final long[] airs;
      private int begin;
      private int end;
      private int none;
      private long sum;

      InStep(Subject subject, ProbeLog core, Step step) {
        this.core = core;
        this.heats = step == Step.SMOKE;
        this.start = subject.into(step).orElseThrow();
        this.airs = subject.air(step).beside(core);
      }

      List<Doubt> find() {
        List<Doubt> doubts = new ArrayList<>();
        int lastFar = -1;
        int lastApart = -1;
        for (int i = 0; i < airs.length; i++) {
          lastFar = isOver(i, far.difference()) ? i : lastFar;
          lastApart = isOver(i, 2 * less.difference()) ? i : lastApart;
          int last = like(i);
          if (last > i && isTooSoon(i, lastFar, lastApart)) {
            while (last < core.last() && like(last) > last) {
              last = like(last);
            }
            doubts.add(doubt(new Run(i, last)));
            i = last;
          }
        }
        return doubts;
      }

      /** Further from the air than that, on the side where a core belongs. */
      private boolean isOver(int index, long apart) {
        long over = airs[index] == Air.NONE ? 0 : core.level(index) - airs[index];
        return (heats ? -over : over) > apart;
      }

      /** A door that was opened brings the air to the core, but not for the whole way from afar. */
      private boolean isTooSoon(int index, int lastFar, int lastApart) {
        long at = core.at(index);
        boolean started = at >= start && at - start <= afterStart.toMillis();
        return started
            || (lastFar >= 0
                && at - core.at(lastFar) <= afterFar.toMillis()
                && hasComeItself(index, lastFar)
                && hasComeItself(index, lastApart));
      }

      /** Whether it was the core that went to the air, and not the air that came to the core. */
      private boolean hasComeItself(int index, int since) {
        return Math.abs(core.rise(since, index)) > Math.abs(airs[index] - airs[since]);
      }

      /**
       * The end of a time from a reading on in which it is like the air on average; 0 if none.
       * Asked for later and later readings, it goes over the log once.
       */
      private int like(int from) {
        begin(from);
        while (end < airs.length && (end == from || !isKept(from))) {
          sum += apart(end++);
        }
        while (none < end && airs[none] != Air.NONE) {
          none++;
        }
        boolean whole = none == end && isKept(from);
        return whole && sum < less.difference() * (end - from) ? end - 1 : 0;
      }

      private boolean isKept(int from) {
        return core.between(from, end - 1) >= keptFor.toMillis();
      }

      private void begin(int from) {
        while (begin < from && begin < end) {
          sum -= apart(begin++);
        }
        begin = from;
        end = Math.max(end, from);
        none = Math.max(none, from);
      }

      private long apart(int index) {
        return airs[index] == Air.NONE ? 0 : Math.abs(core.level(index) - airs[index]);
      }

      private Doubt doubt(Run run) {
        return core.doubt(
            run,
            IN_DOUBT,
            say(
                "doubt.like-air.found",
                "{0} as its air, from {1} to {2}",
                core.probe(),
                core.said(run.first()),
                core.said(run.last())),
            say("doubt.like-air.expected", "a core apart from its air, so soon"),
            say(
                "do.core-equals-air",
                "Say where the probe was, and name other evidence for the core."));
      }
    }
  }

  /**
   * A core colder than the air that chills it, or hotter than the air that heats it, for some
   * minutes. It is no doubt where the air passed the core, as a dying fire's does, or a fridge that
   * is loaded again; only where the core leapt past the air, or was on the wrong side at once.
   *
   * @param below how much colder it may be in the chill
   * @param above how much hotter it may be in the smoke
   * @param keptFor for less than this it may be more
   */
  @Choice("core on the wrong side of its air")
  record WrongSide(Degrees below, Degrees above, Duration keptFor) implements CoreAirRule {

    @Override
    public Stream<Doubt> find(Subject subject, ProbeLog core) {
      return Stream.of(Step.SMOKE, Step.CHILL)
          .flatMap(step -> new InStep(core, step, subject.air(step)).find());
    }

    /** A core beside its air in one step. */
    private final class InStep {

      private final ProbeLog core;
      private final boolean heats;
      private final long[] airs;

      InStep(ProbeLog core, Step step, Air air) {
        this.core = core;
        this.heats = step == Step.SMOKE;
        this.airs = air.beside(core);
      }

      Stream<Doubt> find() {
        return Run.where(airs.length, this::isWrong)
            .filter(run -> core.between(run.first(), run.last()) >= keptFor.toMillis())
            .filter(run -> isLeap(run.first()))
            .map(run -> doubt(run));
      }

      private boolean isWrong(int index) {
        long over = core.level(index) - airs[index];
        return airs[index] != Air.NONE
            && (heats ? over > above.difference() : -over > below.difference());
      }

      /** Whether it was the core that passed the air, and not the air that passed the core. */
      private boolean isLeap(int first) {
        return IntStream.iterate(first - 1, i -> i >= 0, i -> i - 1)
            .filter(i -> airs[i] != Air.NONE && !isWrong(i))
            .limit(1)
            .allMatch(
                before ->
                    Math.abs(core.rise(before, first)) > Math.abs(airs[first] - airs[before]));
      }

      private Doubt doubt(Run run) {
        Object[] seen = {core.probe(), core.said(run.first()), core.said(run.last())};
        return core.doubt(
            run,
            IN_DOUBT,
            heats
                ? say("doubt.side.hotter", "{0} hotter than its air, from {1} to {2}", seen)
                : say("doubt.side.colder", "{0} colder than its air, from {1} to {2}", seen),
            heats
                ? say("doubt.side.below-air", "a core below the air that heats it")
                : say("doubt.side.above-air", "a core above the air that chills it"),
            say(
                "do.core-on-the-wrong-side-of-its-air",
                "Look whether two channels were swapped in logs.json, and name other evidence for"
                    + " the core."));
      }
    }
  }

  /**
   * A core that stays exactly as it is while the air around it is far from it.
   *
   * @param fine a log that shows a step of this or less is a fine one
   * @param fineFor how long a fine log may stay
   * @param coarseFor how long any other log may stay
   * @param from only cores from here
   * @param to to here change for certain
   * @param airApart with the air at least so far away
   * @param leapFor a shorter time that is enough where a leap follows
   * @param leap which is a step of more than this
   */
  @Choice("stuck")
  record Stuck(
      Degrees fine,
      Duration fineFor,
      Duration coarseFor,
      Degrees from,
      Degrees to,
      Degrees airApart,
      Duration leapFor,
      Degrees leap)
      implements CoreAirRule {

    @Override
    public Stream<Doubt> find(Subject subject, ProbeLog core) {
      List<Air> airs = List.of(subject.air(Step.SMOKE), subject.air(Step.CHILL));
      List<Leaps.Leap> leaps = subject.leaps(core);
      Duration most = isFine(core) ? fineFor : coarseFor;
      return core.flatRuns()
          .filter(run -> isLong(core, run, isMadeUpFor(core, run, leaps) ? leapFor : most))
          .filter(run -> isMoving(core, run.first(), airs))
          .map(run -> doubt(core, run));
    }

    private static boolean isLong(ProbeLog core, Run run, Duration least) {
      return core.between(run.first(), run.last()) >= least.toMillis();
    }

    /** Whether it then makes up for the time, and no leap shows that already. */
    private boolean isMadeUpFor(ProbeLog core, Run run, List<Leaps.Leap> leaps) {
      int last = run.last();
      return last < core.last()
          && Math.abs(core.rise(last, last + 1)) > leap.difference()
          && leaps.stream().noneMatch(each -> each.before() <= last && each.after() > last);
    }

    /** Whether the log shows small steps. */
    private boolean isFine(ProbeLog core) {
      return IntStream.range(0, core.last())
          .mapToLong(i -> Math.abs(core.rise(i, i + 1)))
          .anyMatch(step -> step > 0 && step <= fine.difference());
    }

    /** Whether the core must be changing; where no air was read, it is. */
    private boolean isMoving(ProbeLog core, int index, List<Air> airs) {
      long level = core.level(index);
      return level >= from.level()
          && level <= to.level()
          && airs.stream()
              .map(air -> air.near(core.at(index), level))
              .flatMapToLong(OptionalLong::stream)
              .allMatch(air -> Math.abs(air - level) >= airApart.difference());
    }

    private static Doubt doubt(ProbeLog core, Run run) {
      Run still = new Run(Math.min(run.first() + 1, run.last()), run.last());
      return core.doubt(
              still,
              IN_DOUBT,
              say(
                  "doubt.stuck.found",
                  "{0} at {1} and still at {2}",
                  core.probe(),
                  core.said(run.first()),
                  core.clock(run.last())),
              say("doubt.stuck.expected", "a core that changes"),
              say("do.stuck", "Look at the logger, and name other evidence for the core."))
          .at(core.place(run.first()));
    }
  }
}
