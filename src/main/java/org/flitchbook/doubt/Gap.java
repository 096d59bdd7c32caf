package org.flitchbook.doubt;

import static org.flitchbook.message.Message.say;

import java.util.stream.Stream;
import org.flitchbook.json.Choice;
import org.flitchbook.lot.Track;
import org.flitchbook.message.Message;
import org.flitchbook.sums.Curve;

/** A stretch of a core's log without a reading. */
@Choice("gap")
record Gap() implements Finder {

  @Override
  public Stream<Doubt> find(Subject subject) {
    return subject.coreTracks().stream()
        .flatMap(track -> track.gaps().stream().map(gap -> doubt(subject, track, gap)));
  }

  private Doubt doubt(Subject subject, Track track, Curve.Gap gap) {
    long from = track.earliest(gap.from());
    long to = track.earliest(gap.to());
    Message length = say("doubt.gap.minutes", "{0} min", (to - from) / 60_000);
    return new Doubt(
        track.place(gap.to()),
        say(
            "doubt.gap.found",
            "no reading of {0} from {1} to {2} ({3})",
            Subject.probe(track),
            subject.clock(from),
            subject.clock(to),
            gap.byHand() == 0
                ? length
                : say("doubt.gap.by-hand", "{0}, {1} by hand in it", length, gap.byHand())),
        say("doubt.gap.expected", "a reading every {0} s", track.interval() / 1000),
        say(
            "do.gap",
            "Bridge a gap with a hand reading while it lasts; afterwards it can only be printed."));
  }
}
