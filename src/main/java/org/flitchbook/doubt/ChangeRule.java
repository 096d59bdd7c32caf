package org.flitchbook.doubt;

import static org.flitchbook.input.Stretch.Standing.IN_DOUBT;
import static org.flitchbook.message.Message.say;

import java.time.Duration;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.json.Choice;

/** How the readings of a probe change from one to the next. */
sealed interface ChangeRule extends Finder permits ChangeRule.TwoLevels, ChangeRule.ProbeMoved {

  /**
   * Two readings of one probe at one time that differ: one of them is wrong. A log that is written
   * to the minute may well have several of one minute.
   */
  @Choice("two levels at one time")
  record TwoLevels() implements ChangeRule {

    private static final long A_MINUTE = 60_000;

    @Override
    public Stream<Doubt> find(Subject subject) {
      return subject.logs().stream().flatMap(this::find);
    }

    private Stream<Doubt> find(ProbeLog log) {
      return IntStream.range(0, log.last())
          .filter(i -> log.between(i, i + 1) == 0 && log.rise(i, i + 1) != 0)
          .filter(i -> log.latest(i) - log.at(i) < A_MINUTE)
          .mapToObj(i -> doubt(log, new Run(i, i + 1)));
    }

    private static Doubt doubt(ProbeLog log, Run two) {
      return log.doubt(
              two,
              IN_DOUBT,
              say(
                  "doubt.two-levels.found",
                  "{0}: {1} and {2}",
                  log.probe(),
                  log.said(two.first()),
                  log.said(two.last())),
              say("doubt.two-levels.expected", "one reading of a probe at a time"),
              say(
                  "do.two-levels-at-one-time",
                  "Say which of the two is right, and name other evidence for it."))
          .at(log.place(two.last()));
    }
  }

  /**
   * A core that leaps: what follows, up to the next leap the other way or the end, may be of
   * another spot. The rate is well above that of a belly in ice water, 2.3 °F a minute.
   *
   * @param step a rise by more than this between two readings leaps, where it is faster than the
   *     rate
   * @param rate the most that a core changes in a minute
   * @param keptFor for so long it may not change faster
   * @param towardsAir a change of at least this goes for one towards the air
   * @param within and leaps where it is more than half the way to the air within this time
   */
  @Choice("probe moved")
  record ProbeMoved(
      Degrees step, Degrees rate, Duration keptFor, Degrees towardsAir, Duration within)
      implements ChangeRule {

    @Override
    public Stream<Doubt> find(Subject subject, ProbeLog core) {
      List<Leaps.Leap> leaps = subject.leaps(core);
      return IntStream.range(0, leaps.size())
          .mapToObj(i -> doubt(core, leaps.get(i), until(leaps, i, core)));
    }

    private static int until(List<Leaps.Leap> leaps, int index, ProbeLog core) {
      return leaps.stream()
          .skip(index + 1L)
          .filter(leap -> leap.isUp() != leaps.get(index).isUp())
          .mapToInt(Leaps.Leap::before)
          .findFirst()
          .orElse(core.last());
    }

    private Doubt doubt(ProbeLog core, Leaps.Leap leap, int until) {
      int first = leap.before() + 1;
      return core.doubt(
          new Run(first, Math.max(first, until)),
          IN_DOUBT,
          say(
              "doubt.moved.found",
              "{0}: from {1} to {2}",
              core.probe(),
              core.said(leap.before()),
              core.said(leap.after())),
          say("doubt.moved.expected", "a core that changes by less than {0} a minute", rate),
          say("do.probe-moved", "Say where the probe was, and name other evidence for the core."));
    }
  }
}
