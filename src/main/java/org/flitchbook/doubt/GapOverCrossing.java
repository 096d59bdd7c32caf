package org.flitchbook.doubt;

import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.flitchbook.input.Fault;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Level;
import org.flitchbook.measure.Ratio;
import org.flitchbook.plan.Kind;
import org.flitchbook.sums.BandTime;
import org.flitchbook.sums.Curve;
import org.flitchbook.sums.Shift;

/**
 * A gap of the log over a crossing, where the latest time that the readings allow misses the limit.
 * Where it meets the limit, or a hand reading closes the gap so that it does, the gap is a note.
 */
final class GapOverCrossing implements Finder {

  @Override
  public String name() {
    return "gap over a crossing";
  }

  @Override
  public Map<String, Dimension> numbers() {
    return Map.of("above", Dimension.TIME);
  }

  @Override
  public List<Fault> find(Rule rule, Subject subject) {
    return subject.coreTracks().stream().flatMap(track -> find(rule, subject, track)).toList();
  }

  private static Stream<Fault> find(Rule rule, Subject subject, Track track) {
    return track.gaps().stream()
        .filter(gap -> length(track, gap) > rule.millis("above"))
        .flatMap(
            gap ->
                Bands.of(subject).stages().stream()
                    .filter(stage -> isOpen(track, gap, stage))
                    .findFirst()
                    .map(stage -> fault(rule, subject, track, gap, stage))
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

  private static Fault fault(
      Rule rule, Subject subject, Track track, Curve.Gap gap, Kind.Stage stage) {
    Fault fault =
        rule.fault(
            subject,
            track.place(gap.to()),
            subject.say(
                "doubt.crossing.found",
                "no reading of {0} from {1} to {2}",
                subject.probe(track),
                subject.told(track, gap.from()),
                subject.told(track, gap.to())),
            subject.say(
                "doubt.crossing.expected",
                "readings where it passes {0} and {1}, at most {2} apart",
                stage.from(),
                stage.to(),
                stage.atMost()));
    return subject.silence(fault, track, track.earliest(gap.from()), track.earliest(gap.to()));
  }
}
