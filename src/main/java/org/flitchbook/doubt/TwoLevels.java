package org.flitchbook.doubt;

import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Stretch;
import org.flitchbook.lot.Lot;

/**
 * Two readings of one probe at one time that differ: one of them is wrong. A log that is written to
 * the minute may well have several of one minute.
 */
final class TwoLevels implements Finder {

  private static final long A_MINUTE = 60_000;

  @Override
  public String name() {
    return "two levels at one time";
  }

  @Override
  public List<Fault> find(Rule rule, Subject subject) {
    return subject.lot().tracks().stream()
        .map(Lot.StepTrack::track)
        .filter(track -> track.interval() > 0)
        .map(Log::new)
        .flatMap(log -> find(rule, subject, log))
        .toList();
  }

  private static Stream<Fault> find(Rule rule, Subject subject, Log log) {
    return IntStream.range(0, log.last())
        .filter(i -> log.between(i, i + 1) == 0 && log.rise(i, i + 1) != 0)
        .filter(i -> log.latest(i) - log.at(i) < A_MINUTE)
        .mapToObj(i -> fault(rule, subject, log, i));
  }

  private static Fault fault(Rule rule, Subject subject, Log log, int index) {
    return rule.fault(
            subject,
            log.place(index + 1),
            subject.say(
                "doubt.two-levels.found",
                "{0}: {1} and {2}",
                subject.probe(log.track()),
                subject.told(log, index),
                subject.told(log, index + 1)),
            subject.say("doubt.two-levels.expected", "one reading of a probe at a time"))
        .over(log.stretch(index, index + 1, Stretch.Standing.IN_DOUBT));
  }
}
