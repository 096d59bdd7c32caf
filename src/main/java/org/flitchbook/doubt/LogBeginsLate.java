package org.flitchbook.doubt;

import static org.flitchbook.message.Message.say;

import java.time.Duration;
import java.util.OptionalLong;
import java.util.stream.Stream;
import org.flitchbook.json.Choice;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Level;
import org.flitchbook.plan.Kind;
import org.flitchbook.sheet.Step;
import org.flitchbook.sums.Shift;

/**
 * The first reading of a core comes late, and lies inside a band that is clocked.
 *
 * @param after how late it may come behind the beginning of the smoke, or of the chill without one
 */
@Choice("log begins late")
record LogBeginsLate(Duration after) implements Finder {

  @Override
  public Stream<Doubt> find(Subject subject) {
    OptionalLong smoked = subject.into(Step.SMOKE);
    OptionalLong into = smoked.isPresent() ? smoked : subject.into(Step.CHILL);
    return subject.coreTracks().stream()
        .filter(track -> into.isPresent())
        .filter(track -> track.earliest(0) - into.getAsLong() > after.toMillis())
        .filter(track -> subject.stages().stream().anyMatch(stage -> isInside(stage, first(track))))
        .map(track -> doubt(subject, track, into.getAsLong()));
  }

  private static long first(Track track) {
    return track.level(0, Shift.AS_WRITTEN);
  }

  private static boolean isInside(Kind.Stage stage, long level) {
    long from = Level.of(stage.from());
    long to = Level.of(stage.to());
    return level > Math.min(from, to) && level < Math.max(from, to);
  }

  private Doubt doubt(Subject subject, Track track, long into) {
    Doubt doubt =
        new Doubt(
            track.place(0),
            say(
                "doubt.begins.found",
                "the log of {0} begins at {1} with {2}",
                Subject.probe(track),
                subject.clock(track.earliest(0)),
                subject.shown(first(track))),
            say("doubt.begins.expected", "readings from {0} on", subject.clock(into)),
            say("do.log-begins-late", "Write the hand readings that were taken before."));
    return doubt.silent(track, into, track.earliest(0));
  }
}
