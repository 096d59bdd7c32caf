package org.flitchbook.doubt;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.flitchbook.input.Fault;
import org.flitchbook.lot.Stay;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Level;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;
import org.flitchbook.sums.Shift;

/** A core that rises while it chills. */
final class ReWarming implements Finder {

  private static final String ABOVE = "above";

  @Override
  public String name() {
    return "re-warming";
  }

  @Override
  public Map<String, Dimension> numbers() {
    return Map.of(ABOVE, Dimension.TEMPERATURE);
  }

  @Override
  public List<Fault> find(Rule rule, Subject subject) {
    Optional<Stay> chill = subject.lot().stay(Step.CHILL);
    if (chill.isEmpty()) {
      return List.of();
    }
    long from = chill.get().into().time().latest().toEpochMilli();
    return subject.lot().tracks(What.INTERNAL_TEMPERATURE, Step.SMOKE).stream()
        .flatMap(track -> rise(rule, subject, track, from).stream())
        .toList();
  }

  private static Optional<Fault> rise(Rule rule, Subject subject, Track track, long from) {
    long allowed = Level.ofDifference(rule.number(ABOVE));
    long lowest = Long.MAX_VALUE;
    for (int i = 0; i < track.size(); i++) {
      if (track.earliest(i) >= from && !track.byHand(i)) {
        long level = track.level(i, Shift.AS_WRITTEN);
        if (lowest != Long.MAX_VALUE && level - lowest > allowed) {
          return Optional.of(warmed(rule, subject, track, i, level - lowest));
        }
        lowest = Math.min(lowest, level);
      }
    }
    return Optional.empty();
  }

  private static Fault warmed(Rule rule, Subject subject, Track track, int index, long rise) {
    return rule.fault(
        subject,
        track.place(index),
        subject.say(
            "doubt.warming.found",
            subject.shown(track.level(index, Shift.AS_WRITTEN)),
            subject.clock(track.earliest(index)),
            subject.difference(rise)),
        subject.say("doubt.warming.expected", rule.number(ABOVE).shown()));
  }
}
