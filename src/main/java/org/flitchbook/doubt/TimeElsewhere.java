package org.flitchbook.doubt;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.measure.Dimension;
import org.flitchbook.reading.Samples;
import org.flitchbook.reading.Series;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;

/**
 * A log of a lot's core that begins before the lot was there, or far from when it was written into
 * the smoke: a wrong year, day and month swapped, or another lot's log.
 */
final class TimeElsewhere implements Finder {

  private final String name;
  private final boolean beforeTheLot;

  /**
   * Finds by the rule of that name.
   *
   * @param beforeTheLot whether the lot's first entry is what counts, else its way into the smoke
   */
  TimeElsewhere(String name, boolean beforeTheLot) {
    this.name = name;
    this.beforeTheLot = beforeTheLot;
  }

  @Override
  public String name() {
    return name;
  }

  @Override
  public Map<String, Dimension> numbers() {
    return Map.of("above", Dimension.TIME);
  }

  @Override
  public List<Fault> find(Rule rule, Subject subject) {
    OptionalLong event = beforeTheLot ? firstEntry(subject) : subject.into(Step.SMOKE);
    return subject.lot().logs().stream()
        .filter(series -> series.what() == What.INTERNAL_TEMPERATURE)
        .filter(series -> event.isPresent() && series.samples().size() > 0)
        .flatMap(series -> find(rule, subject, series, event.getAsLong()).stream())
        .toList();
  }

  private static OptionalLong firstEntry(Subject subject) {
    return subject.lot().entries().stream()
        .mapToLong(entry -> entry.time().earliest().toEpochMilli())
        .min();
  }

  private Optional<Fault> find(Rule rule, Subject subject, Series series, long event) {
    Samples samples = series.samples();
    long before = event - samples.at(0);
    long away = beforeTheLot ? before : Math.abs(before);
    if (away <= rule.millis("above")) {
      return Optional.empty();
    }
    Place place = new Place(samples.file(0), samples.line(0), series.column());
    return Optional.of(
        rule.fault(
            subject,
            place,
            subject.say(
                "doubt.elsewhere.found",
                "the log of {0} begins at {1}, {2} away",
                series.called(),
                time(subject, samples.at(0)),
                Subject.length(Duration.ofMillis(away))),
            beforeTheLot
                ? subject.say(
                    "doubt.elsewhere.lot",
                    "times from the lot's first entry on, {0}",
                    time(subject, event))
                : subject.say(
                    "doubt.elsewhere.smoke",
                    "times about those of the smoke, written for {0}",
                    time(subject, event))));
  }

  private static String time(Subject subject, long at) {
    return Instant.ofEpochMilli(at)
        .atZone(subject.plan().establishment().zone())
        .toLocalDateTime()
        .toString();
  }
}
