package org.flitchbook.doubt;

import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import org.flitchbook.input.Fault;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Dimension;
import org.flitchbook.sheet.Step;
import org.flitchbook.sums.Shift;

/** The first reading of a core comes late, and lies inside a band that is clocked. */
final class LogBeginsLate implements Finder {

  @Override
  public String name() {
    return "log begins late";
  }

  @Override
  public Map<String, Dimension> numbers() {
    return Map.of("after", Dimension.TIME);
  }

  @Override
  public List<Fault> find(Rule rule, Subject subject) {
    OptionalLong into =
        subject.into(Step.SMOKE).isPresent() ? subject.into(Step.SMOKE) : subject.into(Step.CHILL);
    return subject.coreTracks().stream()
        .filter(track -> into.isPresent())
        .filter(track -> track.earliest(0) - into.getAsLong() > rule.millis("after"))
        .filter(track -> Bands.of(subject).hold(track.level(0, Shift.AS_WRITTEN)))
        .map(track -> fault(rule, subject, track, into.getAsLong()))
        .toList();
  }

  private static Fault fault(Rule rule, Subject subject, Track track, long into) {
    Fault fault =
        rule.fault(
            subject,
            track.place(0),
            subject.say(
                "doubt.begins.found",
                "the log of {0} begins at {1} with {2}",
                subject.probe(track),
                subject.clock(track.earliest(0)),
                subject.shown(track.level(0, Shift.AS_WRITTEN))),
            subject.say("doubt.begins.expected", "readings from {0} on", subject.clock(into)));
    return subject.silence(fault, track, into, track.earliest(0));
  }
}
