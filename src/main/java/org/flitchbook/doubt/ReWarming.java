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
import org.flitchbook.sums.Shift;

/**
 * A core that rises while it chills: by more than a few degrees, once the first half hour is over,
 * or by more than its uncertainty above a bound of the cooling that it had passed.
 *
 * @param above it may rise so far above its lowest
 * @param after once so long after the chill began
 */
@Choice("re-warming")
record ReWarming(Degrees above, Duration after) implements Finder {

  @Override
  public Stream<Doubt> find(Subject subject, ProbeLog core) {
    return subject.into(Step.CHILL).stream().flatMap(into -> find(subject, core, into).stream());
  }

  private List<Doubt> find(Subject subject, ProbeLog core, long into) {
    List<Long> bounds = subject.coolingBounds();
    List<Doubt> doubts = new ArrayList<>();
    long from = into + after.toMillis();
    int lowest = core.atOrAfter(into);
    for (int i = lowest + 1; i < core.size(); i++) {
      if ((core.at(i) >= from && core.rise(lowest, i) > above.difference())
          || isAcross(core, lowest, i, bounds)) {
        int low = lowest;
        int last =
            IntStream.range(i, core.last())
                .filter(at -> core.level(at + 1) <= core.level(low))
                .findFirst()
                .orElse(core.last());
        doubts.add(doubt(subject, core, new Run(lowest, last), i));
        i = last;
      }
      lowest = core.level(i) < core.level(lowest) ? i : lowest;
    }
    return doubts;
  }

  /** It had been at or below a bound, and is above it by more than the log's error explains. */
  private static boolean isAcross(ProbeLog core, int lowest, int index, List<Long> bounds) {
    return core.level(index, Shift.DOWN) > core.level(lowest, Shift.UP)
        && bounds.stream()
            .anyMatch(
                bound -> core.level(lowest) <= bound && core.level(index, Shift.DOWN) > bound);
  }

  private Doubt doubt(Subject subject, ProbeLog core, Run run, int index) {
    return core.doubt(
            new Run(run.first() + 1, run.last()),
            IN_DOUBT,
            say(
                "doubt.warming.found",
                "{0} at {1}, up by {2} while it chills",
                subject.shown(core.level(index)),
                core.clock(index),
                subject.difference(core.rise(run.first(), index))),
            say("doubt.warming.expected", "no rise above {0}", above),
            say(
                "do.re-warming",
                "Say what warmed the piece, and name other evidence for its core."))
        .at(core.place(index));
  }
}
