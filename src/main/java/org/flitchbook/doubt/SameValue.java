package org.flitchbook.doubt;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.flitchbook.input.Fault;
import org.flitchbook.measure.Dimension;

/** The same value by hand time after time: a pattern for the reviewer, not an accusation. */
final class SameValue implements Finder {

  @Override
  public String name() {
    return "same value again";
  }

  @Override
  public Map<String, Dimension> numbers() {
    return Map.of("times", Dimension.NUMBER);
  }

  @Override
  public List<Fault> find(Rule rule, Subject subject) {
    List<Fault> faults = new ArrayList<>();
    for (HandReadings readings : HandReadings.of(subject.lot())) {
      int first = 0;
      for (int i = 1; i <= readings.size(); i++) {
        if (i == readings.size() || !shown(readings, i).equals(shown(readings, first))) {
          if (i - first >= rule.count("times")) {
            faults.add(fault(rule, subject, readings, first, i - first));
          }
          first = i;
        }
      }
    }
    return faults;
  }

  private static String shown(HandReadings readings, int index) {
    return readings.entries().get(index).shown();
  }

  private static Fault fault(
      Rule rule, Subject subject, HandReadings readings, int first, int times) {
    return rule.fault(
        subject,
        readings.entries().get(first).place().column("value"),
        subject.say(
            "doubt.same.found",
            "{0} written {1} times running for {2}",
            shown(readings, first),
            times,
            subject.what(readings.what())),
        subject.say("doubt.same.expected", "fewer than {0} running", rule.count("times")));
  }
}
