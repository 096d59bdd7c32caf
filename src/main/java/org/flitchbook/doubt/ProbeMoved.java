package org.flitchbook.doubt;

import static org.flitchbook.input.Stretch.Standing.IN_DOUBT;
import static org.flitchbook.message.Message.say;

import java.time.Duration;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.json.Choice;

/**
 * A core that leaps: what follows, up to the next leap the other way or the end, may be of another
 * spot. The rate is well above that of a belly in ice water, 2.3 °F a minute.
 *
 * @param step a rise by more than this between two readings leaps, where it is faster than the rate
 * @param rate the most that a core changes in a minute
 * @param keptFor for so long it may not change faster
 * @param towardsAir a change of at least this goes for one towards the air
 * @param within and leaps where it is more than half the way to the air within this time
 */
@Choice("probe moved")
record ProbeMoved(Degrees step, Degrees rate, Duration keptFor, Degrees towardsAir, Duration within)
    implements Finder.OfCore {

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
