package org.flitchbook.doubt;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.measure.Dimension;
import org.flitchbook.reading.Samples;
import org.flitchbook.reading.Series;
import org.flitchbook.sheet.What;

/**
 * The clock of a core's log against what was written by hand: off by as much at both ends of the
 * smoke, or, drifting, by more at the one than at the other.
 */
final class ClockOff implements Finder {

  private final String name;
  private final boolean drifting;

  /**
   * Finds by the rule of that name.
   *
   * @param drifting whether the two ends are held against each other
   */
  ClockOff(String name, boolean drifting) {
    this.name = name;
    this.drifting = drifting;
  }

  @Override
  public String name() {
    return name;
  }

  @Override
  public Map<String, Dimension> numbers() {
    return Anchor.NUMBERS;
  }

  @Override
  public List<Fault> find(Rule rule, Subject subject) {
    return subject.lot().logs().stream()
        .filter(series -> series.what() == What.INTERNAL_TEMPERATURE)
        .flatMap(series -> find(rule, subject, series).stream())
        .toList();
  }

  private Optional<Fault> find(Rule rule, Subject subject, Series series) {
    long above = rule.millis("above");
    return Anchor.joined(Anchor.of(rule, subject, series))
        .filter(
            clock ->
                drifting
                    ? clock.least() - clock.most() > above
                    : clock.least() <= clock.most()
                        && (clock.least() > above || clock.most() < -above))
        .map(clock -> fault(rule, subject, series, clock));
  }

  private Fault fault(Rule rule, Subject subject, Series series, Anchor clock) {
    Samples samples = series.samples();
    Place place = new Place(samples.file(0), samples.line(0), series.column());
    String off =
        drifting
            ? subject.say("doubt.clock.drifts", "otherwise off at the end than at the beginning")
            : clock.shown(subject);
    return rule.fault(
        subject,
        place,
        subject.say(
            "doubt.clock.found", "the clock of {0} {1}: {2}", series.called(), off, clock.told()),
        subject.say(
            "doubt.clock.expected",
            "a clock that goes right within {0}",
            rule.number("above").shown()));
  }
}
