package org.flitchbook.doubt;

import static org.flitchbook.input.Stretch.Standing.NO_READING;
import static org.flitchbook.message.Message.say;

import java.util.List;
import java.util.stream.Stream;
import org.flitchbook.json.Choice;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Level;
import org.flitchbook.message.Message;

/**
 * A number that a logger writes for want of a reading: some always, some only where they stand
 * alone, since a smoker's air may well be at 185 °F.
 *
 * @param always these are no reading anywhere
 * @param alone these are none where both neighbours are more than {@code apart} from them
 */
@Choice("error value")
record ErrorValue(List<Degrees> always, List<Degrees> alone, Degrees apart) implements Finder {

  @Override
  public Stream<Doubt> find(Subject subject) {
    return subject.logs().stream()
        .filter(log -> log.track().unit().dimension() == Dimension.TEMPERATURE)
        .flatMap(
            log -> log.flatRuns().filter(run -> isError(log, run)).map(run -> doubt(log, run)));
  }

  private boolean isError(ProbeLog log, Run run) {
    return isOneOf(always, log, run) || (isOneOf(alone, log, run) && standsAlone(log, run));
  }

  private static boolean isOneOf(List<Degrees> errors, ProbeLog log, Run run) {
    return errors.stream().anyMatch(error -> error.level() == log.level(run.first()));
  }

  private boolean standsAlone(ProbeLog log, Run run) {
    boolean before = run.first() == 0 || isApart(log, run.first() - 1, run.first());
    boolean after = run.last() == log.last() || isApart(log, run.last(), run.last() + 1);
    return before && after && run.size() < log.size();
  }

  private boolean isApart(ProbeLog log, int from, int to) {
    return Math.abs(log.rise(from, to)) > apart.difference();
  }

  private Doubt doubt(ProbeLog log, Run run) {
    Message found =
        say(
            "doubt.error.found",
            "{0} of {1} at {2}",
            Level.quantity(log.level(run.first()), log.track().unit()),
            log.probe(),
            log.clock(run.first()));
    return log.doubt(
        run,
        NO_READING,
        run.size() > 1
            ? say("doubt.error.several", "{0} ({1} readings)", found, run.size())
            : found,
        say("doubt.error.expected", "a reading; this is what a logger writes for want of one"),
        say("do.error-value", "Look at the probe's plug."));
  }
}
