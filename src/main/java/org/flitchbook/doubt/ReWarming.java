package org.flitchbook.doubt;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Stretch;
import org.flitchbook.measure.Dimension;
import org.flitchbook.sheet.Step;
import org.flitchbook.sums.Shift;

/**
 * A core that rises while it chills: by more than a few degrees, once the first half hour is over,
 * or by more than its uncertainty above a bound of the cooling that it had passed.
 */
final class ReWarming implements Finder {

  @Override
  public String name() {
    return "re-warming";
  }

  @Override
  public Map<String, Dimension> numbers() {
    return Map.of("above", Dimension.TEMPERATURE, "after", Dimension.TIME);
  }

  @Override
  public List<Fault> find(Rule rule, Subject subject) {
    OptionalLong into = subject.into(Step.CHILL);
    List<Fault> faults = new ArrayList<>();
    if (into.isPresent()) {
      List<Long> bounds = Bands.of(subject).falling().bounds();
      subject.cores().forEach(core -> find(rule, subject, core, into.getAsLong(), bounds, faults));
    }
    return faults;
  }

  private static void find(
      Rule rule, Subject subject, Log core, long into, List<Long> bounds, List<Fault> faults) {
    long above = rule.difference("above");
    long from = into + rule.millis("after");
    int lowest = core.atOrAfter(into);
    for (int i = lowest + 1; i < core.size(); i++) {
      if ((core.at(i) >= from && core.rise(lowest, i) > above)
          || isAcross(core, lowest, i, bounds)) {
        int last = lastWarm(core, lowest, i);
        faults.add(fault(rule, subject, core, lowest, i, last));
        i = last;
      }
      lowest = core.level(i) < core.level(lowest) ? i : lowest;
    }
  }

  /** It had been at or below a bound, and is above it by more than the log's error explains. */
  private static boolean isAcross(Log core, int lowest, int index, List<Long> bounds) {
    return core.level(index, Shift.DOWN) > core.level(lowest, Shift.UP)
        && bounds.stream()
            .anyMatch(
                bound -> core.level(lowest) <= bound && core.level(index, Shift.DOWN) > bound);
  }

  private static int lastWarm(Log core, int lowest, int from) {
    int last = from;
    while (last < core.last() && core.level(last + 1) > core.level(lowest)) {
      last++;
    }
    return last;
  }

  private static Fault fault(
      Rule rule, Subject subject, Log core, int lowest, int index, int last) {
    return rule.fault(
            subject,
            core.place(index),
            subject.say(
                "doubt.warming.found",
                "{0} at {1}, up by {2} while it chills",
                subject.shown(core.level(index)),
                subject.clock(core.at(index)),
                subject.difference(core.rise(lowest, index))),
            subject.say(
                "doubt.warming.expected", "no rise above {0}", rule.number("above").shown()))
        .over(core.stretch(lowest + 1, last, Stretch.Standing.IN_DOUBT));
  }
}
