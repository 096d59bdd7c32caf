package org.flitchbook.doubt;

import static org.flitchbook.message.Message.say;

import java.time.Duration;
import java.util.stream.Stream;
import org.flitchbook.json.Choice;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Level;
import org.flitchbook.measure.Ratio;
import org.flitchbook.plan.Kind;
import org.flitchbook.sums.BandTime;
import org.flitchbook.sums.Curve;
import org.flitchbook.sums.Shift;

/**
 * A gap of the log over a crossing, where the latest time that the readings allow misses the limit.
 * Where it meets the limit, or a hand reading closes the gap so that it does, the gap is a note.
 *
 * @param above a gap of this length or less is not looked at
 */
@Choice("gap over a crossing")
record GapOverCrossing(Duration above) implements Finder {

  @Override
  public Stream<Doubt> find(Subject subject) {
    return subject.coreTracks().stream().flatMap(track -> find(subject, track));
  }

  private Stream<Doubt> find(Subject subject, Track track) {
    return track.gaps().stream()
        .filter(gap -> length(track, gap) > above.toMillis())
        .flatMap(
            gap ->
                subject.stages().stream()
                    .filter(stage -> isOpen(track, gap, stage))
                    .findFirst()
                    .map(stage -> doubt(subject, track, gap, stage))
                    .stream());
  }

  private static long length(Track track, Curve.Gap gap) {
    return track.earliest(gap.to()) - track.earliest(gap.from());
  }

  /** Whether a clock that begins or ends in the gap is too long at its worst. */
  private static boolean isOpen(Track track, Curve.Gap gap, Kind.Stage stage) {
    long most = stage.atMost().inBase().times(Ratio.of(1000)).floor().longValueExact();
    return Stream.of(Shift.values())
        .map(shift -> clock(track, shift, stage))
        .filter(time -> time.state() == BandTime.State.DONE && time.longest() > most)
        .anyMatch(time -> isIn(gap, time.start()) || isIn(gap, time.end() - 1));
  }

  /** Whether the time between that reading and the next lies in the gap. */
  private static boolean isIn(Curve.Gap gap, int before) {
    return before >= gap.from() && before < gap.to();
  }

  private static BandTime clock(Track track, Shift shift, Kind.Stage stage) {
    long from = Level.of(stage.from());
    long to = Level.of(stage.to());
    return stage.falling()
        ? BandTime.falling(track, shift, from, to)
        : BandTime.rising(track, shift, from, to);
  }

  private Doubt doubt(Subject subject, Track track, Curve.Gap gap, Kind.Stage stage) {
    Doubt doubt =
        new Doubt(
            track.place(gap.to()),
            say(
                "doubt.crossing.found",
                "no reading of {0} from {1} to {2}",
                Subject.probe(track),
                subject.said(track, gap.from()),
                subject.said(track, gap.to())),
            say(
                "doubt.crossing.expected",
                "readings where it passes {0} and {1}, at most {2} apart",
                stage.from().asWritten(),
                stage.to().asWritten(),
                stage.atMost().asWritten()),
            say(
                "do.gap-over-a-crossing",
                "Write the hand readings that were taken meanwhile; without them the limit is not"
                    + " shown."));
    return doubt.silent(track, track.earliest(gap.from()), track.earliest(gap.to()));
  }
}
