package org.flitchbook.doubt;

import static org.flitchbook.input.Stretch.Standing.IN_DOUBT;
import static org.flitchbook.message.Message.say;

import java.time.Duration;
import java.util.List;
import java.util.OptionalLong;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.json.Choice;
import org.flitchbook.sheet.Step;

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
    implements Finder.OfCore {

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
