package org.flitchbook.doubt;

import java.util.List;
import java.util.OptionalLong;
import org.flitchbook.input.Fault;
import org.flitchbook.lot.Track;
import org.flitchbook.sheet.Step;
import org.flitchbook.sums.Shift;

/** The last reading of a core is still above where the cooling should end. */
final class LogEndsEarly implements Finder {

  @Override
  public String name() {
    return "log ends early";
  }

  @Override
  public List<Fault> find(Rule rule, Subject subject) {
    OptionalLong lowest =
        Bands.of(subject).falling().bounds().stream().mapToLong(Long::longValue).min();
    OptionalLong end = subject.endOf(Step.CHILL);
    return subject.coreTracks().stream()
        .filter(track -> end.isPresent() && lowest.isPresent())
        .filter(track -> last(track) > lowest.getAsLong())
        .map(track -> fault(rule, subject, track, lowest.getAsLong(), end.getAsLong()))
        .toList();
  }

  private static long last(Track track) {
    return track.level(track.size() - 1, Shift.AS_WRITTEN);
  }

  private static Fault fault(Rule rule, Subject subject, Track track, long lowest, long end) {
    int last = track.size() - 1;
    Fault fault =
        rule.fault(
            subject,
            track.place(last),
            subject.say(
                "doubt.ends.found",
                "the log of {0} ends at {1}, {2}",
                subject.probe(track),
                subject.shown(last(track)),
                subject.clock(track.earliest(last))),
            subject.say("doubt.ends.expected", "readings down to {0}", subject.shown(lowest)));
    return subject.silence(fault, track, track.earliest(last), end);
  }
}
