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
 * A probe that leaps away and soon back to where it was: what it read meanwhile is of something
 * else. Near the end of the smoke, where the finish is read, that must be explained.
 */
final class ProbePulled implements Finder {

  private final String name;
  private final boolean atFinish;

  ProbePulled(String name, boolean atFinish) {
    this.name = name;
    this.atFinish = atFinish;
  }

  @Override
  public String name() {
    return name;
  }

  @Override
  public Map<String, Dimension> numbers() {
    return Map.of(
        "within", Dimension.TIME, "back", Dimension.TEMPERATURE, "finish", Dimension.TIME);
  }

  @Override
  public List<Fault> find(Rule rule, Subject subject) {
    List<Fault> faults = new ArrayList<>();
    for (Log core : subject.cores()) {
      List<Leaps.Leap> leaps = Leaps.of(subject, core);
      for (int i = 0; i + 1 < leaps.size(); i++) {
        if (isBack(rule, core, leaps.get(i), leaps.get(i + 1))
            && atFinish == isAtFinish(rule, subject, core.at(leaps.get(i).before()))) {
          faults.add(fault(rule, subject, core, leaps.get(i), leaps.get(i + 1)));
          i++;
        }
      }
    }
    return faults;
  }

  private static boolean isBack(Rule rule, Log core, Leaps.Leap away, Leaps.Leap back) {
    long apart = Math.abs(core.rise(away.before(), back.after()));
    return away.isUp() != back.isUp()
        && core.between(away.before(), back.after()) <= rule.millis("within")
        && apart <= rule.difference("back")
        && 2 * apart <= Math.abs(away.rise());
  }

  private static boolean isAtFinish(Rule rule, Subject subject, long pulled) {
    OptionalLong out = subject.endOf(Step.SMOKE);
    return out.isPresent()
        && pulled < out.getAsLong()
        && pulled >= out.getAsLong() - rule.millis("finish");
  }

  private static Fault fault(
      Rule rule, Subject subject, Log core, Leaps.Leap away, Leaps.Leap back) {
    int first = away.before() + 1;
    int last = Math.max(first, back.after() - 1);
    return rule.fault(
            subject,
            core.place(first),
            subject.say(
                "doubt.pulled.found",
                "{0}: away from {1} and back to {2}",
                subject.probe(core.track()),
                subject.told(core, away.before()),
                subject.told(core, back.after())),
            subject.say("doubt.pulled.expected", "a probe that stays where it is"))
        .over(core.stretch(first, last, Stretch.Standing.PROBE_OUT));
  }
}
