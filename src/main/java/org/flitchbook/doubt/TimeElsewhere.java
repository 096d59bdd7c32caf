package org.flitchbook.doubt;

import static org.flitchbook.message.Message.say;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.util.Comparator;
import java.util.Optional;
import java.util.stream.Stream;
import org.flitchbook.json.Choice;
import org.flitchbook.reading.Series;
import org.flitchbook.sheet.Step;

/**
 * A log of a lot's core that begins before the lot was there, or far from when it was written into
 * the smoke: a wrong year, day and month swapped, or another lot's log.
 *
 * @param above it may begin so long before the lot's first entry, or so far from its way into smoke
 */
@Choice({TimeElsewhere.BEFORE, "time far from its step"})
record TimeElsewhere(String rule, Duration above) implements Finder {

  static final String BEFORE = "time before the lot";

  private boolean isBefore() {
    return rule.equals(BEFORE);
  }

  @Override
  public Stream<Doubt> find(Subject subject) {
    return (isBefore() ? firstEntry(subject) : subject.into(Step.SMOKE))
        .stream()
            .flatMap(
                event ->
                    subject
                        .wholeLogs()
                        .filter(series -> away(series, event) > above.toMillis())
                        .map(series -> doubt(subject, series, event)));
  }

  private static Optional<Long> firstEntry(Subject subject) {
    return subject.lot().entries().stream()
        .map(entry -> entry.time().earliest().toEpochMilli())
        .min(Comparator.naturalOrder());
  }

  private long away(Series series, long event) {
    long before = event - series.samples().at(0);
    return isBefore() ? before : Math.abs(before);
  }

  private Doubt doubt(Subject subject, Series series, long event) {
    LocalDateTime written = time(subject, event);
    return new Doubt(
        Subject.begin(series),
        say(
            "doubt.elsewhere.found",
            "the log of {0} begins at {1}, {2} away",
            series.called(),
            time(subject, series.samples().at(0)),
            Subject.length(Duration.ofMillis(away(series, event)))),
        isBefore()
            ? say("doubt.elsewhere.lot", "times from the lot's first entry on, {0}", written)
            : say(
                "doubt.elsewhere.smoke",
                "times about those of the smoke, written for {0}",
                written),
        isBefore()
            ? say(
                "do.time-before-the-lot",
                "Look at the year, at day and month, and at \"from\" in logs.json; or name the"
                    + " lot that it is of.")
            : say(
                "do.time-far-from-its-step",
                "Look at the date of the log and of the entry; or name the lot that it is of."));
  }

  private static LocalDateTime time(Subject subject, long at) {
    return LocalDateTime.ofInstant(Instant.ofEpochMilli(at), subject.plan().establishment().zone());
  }
}
