package org.flitchbook.doubt;

import static org.flitchbook.input.Stretch.Standing.IN_DOUBT;
import static org.flitchbook.message.Message.say;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.flitchbook.json.Choice;
import org.flitchbook.sheet.Step;

/**
 * A core that is as its air for some minutes, where no piece can have come so near to it yet: soon
 * after the load or the beginning of the chill, or soon after it was far from it.
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
    implements Finder.OfCore {

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
     * The end of a time from a reading on in which it is like the air on average; 0 if none. Asked
     * for later and later readings, it goes over the log once.
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
