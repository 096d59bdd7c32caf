package org.flitchbook.doubt;

import static org.flitchbook.input.Stretch.Standing.IN_DOUBT;
import static org.flitchbook.message.Message.say;

import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.json.Choice;

/**
 * Two readings of one probe at one time that differ: one of them is wrong. A log that is written to
 * the minute may well have several of one minute.
 */
@Choice("two levels at one time")
record TwoLevels() implements Finder {

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
