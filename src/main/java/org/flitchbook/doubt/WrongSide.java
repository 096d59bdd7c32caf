package org.flitchbook.doubt;

import static org.flitchbook.input.Stretch.Standing.IN_DOUBT;
import static org.flitchbook.message.Message.say;

import java.time.Duration;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.json.Choice;
import org.flitchbook.sheet.Step;

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
record WrongSide(Degrees below, Degrees above, Duration keptFor) implements Finder.OfCore {

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
              before -> Math.abs(core.rise(before, first)) > Math.abs(airs[first] - airs[before]));
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
              "Look whether two channels were swapped in logs.json, and name other evidence for the"
                  + " core."));
    }
  }
}
