package org.flitchbook.doubt;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Stretch;
import org.flitchbook.measure.Dimension;
import org.flitchbook.sheet.Step;

/**
 * A core colder than the air that chills it, or hotter than the air that heats it, for some
 * minutes. It is no doubt where the air passed the core, as a dying fire's does, or a fridge that
 * is loaded again; only where the core leapt past the air, or was on the wrong side at once.
 */
final class WrongSide implements Finder {

  @Override
  public String name() {
    return "core on the wrong side of its air";
  }

  @Override
  public Map<String, Dimension> numbers() {
    return Map.of(
        "below", Dimension.TEMPERATURE,
        "above", Dimension.TEMPERATURE,
        "keptFor", Dimension.TIME);
  }

  @Override
  public List<Fault> find(Rule rule, Subject subject) {
    List<Fault> faults = new ArrayList<>();
    for (Log core : subject.cores()) {
      find(rule, subject, core, Step.SMOKE, faults);
      find(rule, subject, core, Step.CHILL, faults);
    }
    return faults;
  }

  private static void find(Rule rule, Subject subject, Log core, Step step, List<Fault> faults) {
    Air air = Air.of(subject.lot(), step);
    long allowed = rule.difference(step == Step.SMOKE ? "above" : "below");
    int before = -1;
    for (int i = 0; i < core.size() && !air.isEmpty(); i++) {
      int first = i;
      while (i < core.size() && isWrong(core, i, step, air, allowed)) {
        i++;
      }
      boolean kept = i > first && core.between(first, i - 1) >= rule.millis("keptFor");
      if (kept && isLeap(core, before, first, air)) {
        faults.add(fault(rule, subject, core, first, i - 1, step));
      }
      before = i < core.size() && air.near(core.at(i), core.level(i)).isPresent() ? i : before;
    }
  }

  private static boolean isWrong(Log core, int index, Step step, Air air, long allowed) {
    OptionalLong near = air.near(core.at(index), core.level(index));
    long over = near.isPresent() ? core.level(index) - near.getAsLong() : 0;
    return near.isPresent() && (step == Step.SMOKE ? over : -over) > allowed;
  }

  /** Whether it was the core that passed the air, and not the air that passed the core. */
  private static boolean isLeap(Log core, int before, int first, Air air) {
    if (before < 0) {
      return true;
    }
    long airThen = air.near(core.at(before), core.level(before)).orElseThrow();
    long airNow = air.near(core.at(first), core.level(first)).orElseThrow();
    return Math.abs(core.rise(before, first)) > Math.abs(airNow - airThen);
  }

  private static Fault fault(Rule rule, Subject subject, Log core, int first, int last, Step step) {
    boolean heat = step == Step.SMOKE;
    String probe = subject.probe(core.track());
    String from = subject.told(core, first);
    String to = subject.told(core, last);
    return rule.fault(
            subject,
            core.place(first),
            heat
                ? subject.say(
                    "doubt.side.hotter",
                    "{0} hotter than its air, from {1} to {2}",
                    probe,
                    from,
                    to)
                : subject.say(
                    "doubt.side.colder",
                    "{0} colder than its air, from {1} to {2}",
                    probe,
                    from,
                    to),
            heat
                ? subject.say("doubt.side.below-air", "a core below the air that heats it")
                : subject.say("doubt.side.above-air", "a core above the air that chills it"))
        .over(core.stretch(first, last, Stretch.Standing.IN_DOUBT));
  }
}
