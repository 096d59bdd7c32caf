package org.flitchbook.doubt;

import static org.flitchbook.input.Stretch.Standing.PROBE_OUT;
import static org.flitchbook.message.Message.say;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.stream.Stream;
import org.flitchbook.json.Choice;
import org.flitchbook.message.Message;
import org.flitchbook.sheet.Step;

/**
 * Readings of a warm room before the probe went into cold meat, and of whatever it lay in once it
 * was drawn, just before the log ends.
 *
 * @param atLoad how long after the lot went in the probe may follow
 * @param atEnd how long before the end of the log it may be drawn
 */
@Choice("probe not in the meat")
record ProbeNotIn(Duration atLoad, Duration atEnd) implements Finder.OfCore {

  @Override
  public Stream<Doubt> find(Subject subject, ProbeLog core) {
    List<Leaps.Leap> leaps = subject.leaps(core);
    return Stream.of(beforeIn(core, leaps, subject.into(Step.SMOKE)), onceOut(core, leaps))
        .flatMap(Optional::stream)
        .map(run -> doubt(core, run));
  }

  private Optional<Run> beforeIn(ProbeLog core, List<Leaps.Leap> leaps, OptionalLong loaded) {
    return leaps.stream()
        .filter(leap -> !leap.isUp() && loaded.isPresent())
        .filter(leap -> core.at(leap.after()) - loaded.getAsLong() <= atLoad.toMillis())
        .reduce((first, second) -> second)
        .map(leap -> new Run(0, leap.after() - 1));
  }

  private Optional<Run> onceOut(ProbeLog core, List<Leaps.Leap> leaps) {
    return leaps.stream()
        .map(leap -> new Run(leap.before() + 1, core.last()))
        .filter(run -> core.between(run.first(), run.last()) <= atEnd.toMillis())
        .findFirst();
  }

  private static Doubt doubt(ProbeLog core, Run run) {
    return core.doubt(
        run,
        PROBE_OUT,
        readings(core, run),
        say("doubt.not-in.expected", "readings of the meat"),
        say(
            "do.probe-not-in-the-meat",
            "Put the probe in before the load, and leave it in to the end."));
  }

  /** What a probe read from the first to the last of some readings. */
  static Message readings(ProbeLog log, Run run) {
    return say(
        "doubt.readings",
        "{0}: {1} to {2}",
        log.probe(),
        log.said(run.first()),
        log.said(run.last()));
  }
}
