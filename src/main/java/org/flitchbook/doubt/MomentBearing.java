package org.flitchbook.doubt;

import static org.flitchbook.message.Message.say;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.flitchbook.lot.Track;
import org.flitchbook.message.Message;
import org.flitchbook.reading.Entry;

/**
 * A fault of one moment, such as two probes that disagree: a further reading at that time, which
 * agrees with the log; of two probes, one by hand that agrees with either.
 *
 * @param index of the log's reading that the fault is about
 * @param others the other logs of which one may be right
 * @param disputed how long before and after it a reading by hand is the one that is in dispute
 */
record MomentBearing(Evidence evidence, Track log, int index, List<Track> others, Duration disputed)
    implements LogBearing {

  @Override
  public Optional<Message> lacks(NamedReading reading) {
    if (!reading.isWithin(near().toMillis(), log.earliest(index))) {
      return Optional.of(
          say(
              "doubt.evidence.other-time",
              "{0} is not within {1} of that time",
              reading.place(),
              Subject.length(near())));
    }
    if (isDisputed(reading)) {
      return Optional.of(
          say("doubt.evidence.no-third", "{0} is no third reading", reading.place()));
    }
    Optional<Message> lacks = disagreement(reading);
    return others.stream()
            .map(other -> new NamedReading(other, reading.track(), reading.index()))
            .anyMatch(other -> disagreement(other).isEmpty())
        ? Optional.empty()
        : lacks;
  }

  /** One of the two, or by the instrument of the one that disagrees by hand. */
  private boolean isDisputed(NamedReading reading) {
    Set<String> instruments =
        IntStream.range(0, log.size())
            .filter(i -> log.byHand(i))
            .mapToObj(i -> new NamedReading(log, log, i))
            .filter(each -> each.isWithin(disputed.toMillis(), log.earliest(index)))
            .filter(each -> !each.agrees(index))
            .flatMap(each -> each.entry().stream())
            .map(Entry::instrument)
            .collect(Collectors.toSet());
    return reading.entry().isEmpty()
        ? !others.isEmpty()
        : instruments.contains(reading.entry().get().instrument())
            || others.stream()
                .anyMatch(other -> other.instrument().equals(reading.entry().get().instrument()));
  }

  @Override
  public Message counts() {
    return say(
        "doubt.counts.moment",
        "a third reading by another thermometer within {0} of that time, which agrees with the"
            + " log",
        Subject.length(near()));
  }
}
