package org.flitchbook.doubt;

import static org.flitchbook.input.Stretch.Standing.NO_READING;
import static org.flitchbook.message.Message.say;

import java.util.stream.Stream;
import org.flitchbook.json.Choice;
import org.flitchbook.sheet.What;

/**
 * A core or an air that can't have been so cold or hot.
 *
 * @param coreBelow no core is below this
 * @param coreAbove no core is above this
 * @param airAbove no air of a smoker is above this
 */
@Choice("impossible value")
record ImpossibleValue(Degrees coreBelow, Degrees coreAbove, Degrees airAbove) implements Finder {

  @Override
  public Stream<Doubt> find(Subject subject) {
    return subject.logs().stream()
        .flatMap(
            log ->
                Run.where(log.size(), i -> isImpossible(log.track().what(), log.level(i)))
                    .map(run -> doubt(log, run)));
  }

  private boolean isImpossible(What what, long level) {
    return switch (what) {
      case INTERNAL_TEMPERATURE -> level < coreBelow.level() || level > coreAbove.level();
      case CHAMBER_TEMPERATURE -> level > airAbove.level();
      default -> false;
    };
  }

  private Doubt doubt(ProbeLog log, Run run) {
    return log.doubt(
        run,
        NO_READING,
        run.size() > 1
            ? ProbeNotIn.readings(log, run)
            : say("doubt.reading", "{0}: {1}", log.probe(), log.said(run.first())),
        log.track().what() == What.INTERNAL_TEMPERATURE
            ? say("doubt.impossible.core", "a core from {0} to {1}", coreBelow, coreAbove)
            : say("doubt.impossible.air", "an air of at most {0}", airAbove),
        say(
            "do.impossible-value",
            "Say where the probe was, and name other evidence for the core."));
  }
}
