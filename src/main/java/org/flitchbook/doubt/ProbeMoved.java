package org.flitchbook.doubt;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Stretch;
import org.flitchbook.measure.Dimension;

/**
 * A core that leaps: what follows, up to the next leap the other way or the end, may be of another
 * spot.
 */
final class ProbeMoved implements Finder {

  static final String NAME = "probe moved";

  @Override
  public String name() {
    return NAME;
  }

  @Override
  public Map<String, Dimension> numbers() {
    return Leaps.NUMBERS;
  }

  @Override
  public List<Fault> find(Rule rule, Subject subject) {
    List<Fault> faults = new ArrayList<>();
    for (Log core : subject.cores()) {
      List<Leaps.Leap> leaps = Leaps.of(subject, core);
      for (int i = 0; i < leaps.size(); i++) {
        faults.add(fault(rule, subject, core, leaps.get(i), until(leaps, i, core)));
      }
    }
    return faults;
  }

  private static int until(List<Leaps.Leap> leaps, int index, Log core) {
    boolean up = leaps.get(index).isUp();
    return leaps.stream()
        .skip(index + 1L)
        .filter(leap -> leap.isUp() != up)
        .mapToInt(Leaps.Leap::before)
        .findFirst()
        .orElse(core.last());
  }

  private static Fault fault(Rule rule, Subject subject, Log core, Leaps.Leap leap, int until) {
    int first = leap.before() + 1;
    return rule.fault(
            subject,
            core.place(first),
            subject.say(
                "doubt.moved.found",
                "{0}: from {1} to {2}",
                subject.probe(core.track()),
                subject.told(core, leap.before()),
                subject.told(core, leap.after())),
            subject.say(
                "doubt.moved.expected",
                "a core that changes by less than {0} a minute",
                rule.number("rate").shown()))
        .over(core.stretch(first, Math.max(first, until), Stretch.Standing.IN_DOUBT));
  }
}
