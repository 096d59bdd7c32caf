package org.flitchbook.doubt;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.LongPredicate;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Stretch;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Dimension;
import org.flitchbook.sheet.What;

/** A core or an air that can't have been so cold or hot. */
final class ImpossibleValue implements Finder {

  @Override
  public String name() {
    return "impossible value";
  }

  @Override
  public Map<String, Dimension> numbers() {
    return Map.of(
        "coreBelow", Dimension.TEMPERATURE,
        "coreAbove", Dimension.TEMPERATURE,
        "airAbove", Dimension.TEMPERATURE);
  }

  @Override
  public List<Fault> find(Rule rule, Subject subject) {
    List<Fault> faults = new ArrayList<>();
    for (Lot.StepTrack each : subject.lot().tracks()) {
      Track track = each.track();
      if (track.what() == What.INTERNAL_TEMPERATURE) {
        long cold = rule.level("coreBelow");
        long hot = rule.level("coreAbove");
        find(rule, subject, new Log(track), level -> level < cold || level > hot, faults);
      } else if (track.what() == What.CHAMBER_TEMPERATURE) {
        long hot = rule.level("airAbove");
        find(rule, subject, new Log(track), level -> level > hot, faults);
      }
    }
    return faults;
  }

  private static void find(
      Rule rule, Subject subject, Log log, LongPredicate isImpossible, List<Fault> faults) {
    for (int i = 0; i < log.size(); i++) {
      int first = i;
      while (i < log.size() && isImpossible.test(log.level(i))) {
        i++;
      }
      if (i > first) {
        faults.add(fault(rule, subject, log, first, i - 1));
      }
    }
  }

  private static Fault fault(Rule rule, Subject subject, Log log, int first, int last) {
    String seen = subject.told(log, first);
    String run =
        last > first ? subject.say("doubt.run", "{0} to {1}", seen, subject.told(log, last)) : seen;
    boolean core = log.track().what() == What.INTERNAL_TEMPERATURE;
    return rule.fault(
            subject,
            log.place(first),
            subject.probe(log.track()) + ": " + run,
            core
                ? subject.say(
                    "doubt.impossible.core",
                    "a core from {0} to {1}",
                    rule.number("coreBelow"),
                    rule.number("coreAbove"))
                : subject.say(
                    "doubt.impossible.air", "an air of at most {0}", rule.number("airAbove")))
        .over(log.stretch(first, last, Stretch.Standing.NO_READING));
  }
}
