package org.flitchbook.doubt;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Stretch;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Level;

/**
 * A number that a logger writes for want of a reading: some always, some only where they stand
 * alone, since a smoker's air may well be at 185 °F.
 */
final class ErrorValue implements Finder {

  @Override
  public String name() {
    return "error value";
  }

  @Override
  public Map<String, Dimension> numbers() {
    return Map.of("apart", Dimension.TEMPERATURE);
  }

  @Override
  public Set<String> lists() {
    return Set.of("always", "alone");
  }

  @Override
  public List<Fault> find(Rule rule, Subject subject) {
    List<Fault> faults = new ArrayList<>();
    subject.lot().tracks().stream()
        .map(Lot.StepTrack::track)
        .filter(track -> track.unit().dimension() == Dimension.TEMPERATURE)
        .map(Log::new)
        .forEach(log -> find(rule, subject, log, faults));
    return faults;
  }

  private static void find(Rule rule, Subject subject, Log log, List<Fault> faults) {
    List<Long> always = rule.levels("always");
    List<Long> alone = rule.levels("alone");
    for (int i = 0; i < log.size(); i++) {
      int last = i;
      while (last < log.last() && log.level(last + 1) == log.level(i)) {
        last++;
      }
      boolean isError = always.contains(log.level(i));
      if (isError || (alone.contains(log.level(i)) && standsAlone(rule, log, i, last))) {
        faults.add(fault(rule, subject, log, i, last));
      }
      i = last;
    }
  }

  private static boolean standsAlone(Rule rule, Log log, int first, int last) {
    long apart = rule.difference("apart");
    boolean before = first == 0 || Math.abs(log.rise(first - 1, first)) > apart;
    boolean after = last == log.last() || Math.abs(log.rise(last, last + 1)) > apart;
    return before && after && last - first < log.last();
  }

  private static Fault fault(Rule rule, Subject subject, Log log, int first, int last) {
    int readings = last - first + 1;
    Track track = log.track();
    String told =
        subject.say(
            "doubt.error.found",
            "{0} of {1} at {2}",
            Level.quantity(log.level(first), track.unit()).shown(),
            subject.probe(track),
            subject.clock(log.at(first)));
    return rule.fault(
            subject,
            log.place(first),
            readings > 1
                ? subject.say("doubt.error.several", "{0} ({1} readings)", told, readings)
                : told,
            subject.say(
                "doubt.error.expected", "a reading; this is what a logger writes for want of one"))
        .over(log.stretch(first, last, Stretch.Standing.NO_READING));
  }
}
