package org.flitchbook.doubt;

import static org.flitchbook.message.Message.say;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.flitchbook.lot.Track;
import org.flitchbook.message.Message;
import org.flitchbook.sheet.Step;

/**
 * The clock of a log: two readings that agree with it where the core changes, so that they would
 * not do so at another time; one near the beginning of the smoke and one near its end.
 */
record ClockBearing(Evidence evidence, Track log) implements LogBearing {

  @Override
  public Optional<Message> lacks(NamedReading reading) {
    long near = near().toMillis();
    return disagreement(reading)
        .or(
            () ->
                Evidence.when(
                    !reading.isApartFrom(-near) || !reading.isApartFrom(near),
                    say(
                        "doubt.evidence.no-slope",
                        "{0} agrees with the log {1} before or after it as well",
                        reading.place(),
                        Subject.length(near()))));
  }

  @Override
  public Optional<Message> lacksYet(List<NamedReading> readings) {
    Subject subject = evidence.subject();
    boolean both =
        Stream.of(subject.into(Step.SMOKE), subject.endOf(Step.SMOKE))
            .allMatch(end -> readings.stream().anyMatch(each -> isNear(each, end)));
    return Evidence.when(
        !both,
        say("doubt.evidence.one-end", "it shows the clock at one end of the smoke at the most"));
  }

  @Override
  public Message counts() {
    return say(
        "doubt.counts.clock",
        "two readings by another thermometer that agree with the log while the core changes, one"
            + " within {0} of going into the smoke and one within {0} of coming out",
        Subject.length(within()));
  }
}
