package org.flitchbook.doubt;

import java.util.List;
import java.util.stream.Stream;
import org.flitchbook.input.Fault;
import org.flitchbook.lot.Track;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;
import org.flitchbook.sums.Curve;

/** A stretch of a core's log without a reading. */
final class Gap implements Finder {

  @Override
  public String name() {
    return "gap";
  }

  @Override
  public List<Fault> find(Rule rule, Subject subject) {
    return subject.lot().tracks(What.INTERNAL_TEMPERATURE, Step.SMOKE).stream()
        .flatMap(track -> gaps(rule, subject, track))
        .toList();
  }

  private static Stream<Fault> gaps(Rule rule, Subject subject, Track track) {
    return track.gaps().stream().map(gap -> gap(rule, subject, track, gap));
  }

  private static Fault gap(Rule rule, Subject subject, Track track, Curve.Gap gap) {
    long from = track.earliest(gap.from());
    long to = track.earliest(gap.to());
    String length = subject.say("doubt.gap.minutes", "{0} min", (to - from) / 60_000);
    String told =
        gap.byHand() == 0
            ? length
            : subject.say("doubt.gap.by-hand", "{0}, {1} by hand in it", length, gap.byHand());
    return rule.fault(
        subject,
        track.place(gap.to()),
        subject.say(
            "doubt.gap.found",
            "no reading of {0} from {1} to {2} ({3})",
            subject.probe(track),
            subject.clock(from),
            subject.clock(to),
            told),
        subject.say("doubt.gap.expected", "a reading every {0} s", track.interval() / 1000));
  }
}
