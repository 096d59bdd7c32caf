package org.flitchbook.doubt;

import static org.flitchbook.message.Message.say;

import java.util.OptionalLong;
import java.util.stream.Stream;
import org.flitchbook.json.Choice;
import org.flitchbook.lot.Track;
import org.flitchbook.sheet.Step;
import org.flitchbook.sums.Shift;

/** The last reading of a core is still above where the cooling should end. */
@Choice("log ends early")
record LogEndsEarly() implements Finder {

  @Override
  public Stream<Doubt> find(Subject subject) {
    OptionalLong lowest = subject.coolingBounds().stream().mapToLong(Long::longValue).min();
    OptionalLong end = subject.endOf(Step.CHILL);
    return subject.coreTracks().stream()
        .filter(track -> end.isPresent() && lowest.isPresent())
        .filter(track -> last(track) > lowest.getAsLong())
        .map(track -> doubt(subject, track, lowest.getAsLong(), end.getAsLong()));
  }

  private static long last(Track track) {
    return track.level(track.size() - 1, Shift.AS_WRITTEN);
  }

  private Doubt doubt(Subject subject, Track track, long lowest, long end) {
    long last = track.earliest(track.size() - 1);
    Doubt doubt =
        new Doubt(
            track.place(track.size() - 1),
            say(
                "doubt.ends.found",
                "the log of {0} ends at {1}, {2}",
                Subject.probe(track),
                subject.shown(last(track)),
                subject.clock(last)),
            say("doubt.ends.expected", "readings down to {0}", subject.shown(lowest)),
            say("do.log-ends-early", "Write the hand readings that were taken later."));
    return doubt.silent(track, last, end);
  }
}
