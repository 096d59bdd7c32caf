package org.flitchbook.doubt;

import static org.flitchbook.input.Stretch.Standing.IN_DOUBT;
import static org.flitchbook.message.Message.say;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.json.Choice;
import org.flitchbook.sheet.Step;

/** A core beside the air around it. */
sealed interface CoreAirRule extends Finder
    permits CoreAirRule.CoreLikeAir, CoreAirRule.WrongSide, CoreAirRule.Stuck {

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
          .map(step -> new InStep(subject, core, step))
          .flatMap(at -> find(at, subject.into(at.step).orElseThrow()).stream());
    }

    private List<Doubt> find(InStep at, long start) {
      List<Doubt> doubts = new ArrayList<>();
      int lastFar = -1;
      int lastApart = -1;
      for (int i = 0; i < at.core.size(); i++) {
        lastFar = at.apart(i) > far.difference() ? i : lastFar;
        lastApart = at.apart(i) > 2 * less.difference() ? i : lastApart;
        boolean started = at.core.at(i) >= start && at.core.at(i) - start <= afterStart.toMillis();
        int last = started || hasCome(at, i, lastFar, lastApart) ? like(at, i) : 0;
        if (last > i) {
          while (last < at.core.last() && like(at, last) > last) {
            last = like(at, last);
          }
          doubts.add(doubt(at.core, new Run(i, last)));
          i = last;
        }
      }
      return doubts;
    }

    /** A door that was opened brings the air to the core, but not for the whole way from afar. */
    private boolean hasCome(InStep at, int index, int lastFar, int lastApart) {
      return lastFar >= 0
          && at.core.between(lastFar, index) <= afterFar.toMillis()
          && at.hasComeItself(lastFar, index)
          && at.hasComeItself(lastApart, index);
    }

    /** The end of a time from a reading on in which it is like the air on average; 0 if none. */
    private int like(InStep at, int from) {
      int last = from;
      long sum = at.distance(last);
      while (last < at.core.last() && at.core.between(from, last) < keptFor.toMillis()) {
        last++;
        sum += at.distance(last);
      }
      boolean whole =
          at.core.between(from, last) >= keptFor.toMillis()
              && IntStream.rangeClosed(from, last).allMatch(at::hasAir);
      return whole && sum < less.difference() * (last - from + 1) ? last : 0;
    }

    private static Doubt doubt(ProbeLog core, Run run) {
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

  /** A core beside its air in one step. */
  final class InStep {

    private final ProbeLog core;
    private final Step step;
    private final long[] airs;

    InStep(Subject subject, ProbeLog core, Step step) {
      this.core = core;
      this.step = step;
      this.airs = subject.air(step).beside(core);
    }

    boolean hasAir(int index) {
      return airs[index] != Air.NONE;
    }

    /** How far it is from the air on the side where a core belongs; below 0 on the other. */
    long apart(int index) {
      long over = hasAir(index) ? core.level(index) - airs[index] : 0;
      return step == Step.SMOKE ? -over : over;
    }

    long distance(int index) {
      return Math.abs(apart(index));
    }

    /** Whether it was the core that went to the air, and not the air that came to the core. */
    boolean hasComeItself(int since, int index) {
      return Math.abs(core.rise(since, index)) > Math.abs(airs[index] - airs[since]);
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
          .map(step -> new InStep(subject, core, step))
          .flatMap(
              at ->
                  Run.where(core.size(), i -> isWrong(at, i))
                      .filter(run -> core.between(run) >= keptFor.toMillis())
                      .filter(run -> isLeap(at, run.first()))
                      .map(run -> doubt(core, run, at.step == Step.SMOKE)));
    }

    private boolean isWrong(InStep at, int index) {
      Degrees most = at.step == Step.SMOKE ? above : below;
      return at.hasAir(index) && -at.apart(index) > most.difference();
    }

    private boolean isLeap(InStep at, int first) {
      return IntStream.iterate(first - 1, i -> i >= 0, i -> i - 1)
          .filter(i -> at.hasAir(i) && !isWrong(at, i))
          .limit(1)
          .allMatch(before -> at.hasComeItself(before, first));
    }

    private static Doubt doubt(ProbeLog core, Run run, boolean heats) {
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
              "Look whether two channels were swapped in logs.json, and name other evidence for the"
                  + " core."));
    }
  }

  /**
   * A core that stays exactly as it is while the air around it is far from it. What it stays while
   * the air is near to it is no doubt: a fire that was banked holds a core for hours.
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
      List<Air> airs = subject.airs();
      List<Leaps.Leap> leaps = subject.leaps(core);
      Duration most = isFine(core) ? fineFor : coarseFor;
      return core.flatRuns()
          .filter(
              run ->
                  moving(core, run, airs)
                      >= (isMadeUpFor(core, run, leaps) ? leapFor : most).toMillis())
          .map(run -> doubt(core, run));
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

    /** How much of a time the core must have been changing, by its air then, in ms. */
    private long moving(ProbeLog core, Run run, List<Air> airs) {
      return IntStream.range(run.first(), run.last())
          .filter(i -> isMoving(core, i, airs))
          .mapToLong(i -> core.between(i, i + 1))
          .sum();
    }

    /** Whether the core must be changing; where no air was read, it is. */
    private boolean isMoving(ProbeLog core, int index, List<Air> airs) {
      long level = core.level(index);
      return level >= from.level()
          && level <= to.level()
          && airs.stream()
              .flatMap(air -> air.near(core.at(index), level).stream())
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
