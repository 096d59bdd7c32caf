package org.flitchbook.doubt;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Stretch;
import org.flitchbook.measure.Dimension;
import org.flitchbook.sheet.Step;

/**
 * A core that is as its air for some minutes, where no piece can have come so near to it yet: soon
 * after the load or the beginning of the chill, or soon after it was far from it.
 */
final class CoreLikeAir implements Finder {

  @Override
  public String name() {
    return "core equals air";
  }

  @Override
  public Map<String, Dimension> numbers() {
    return Map.of(
        "less", Dimension.TEMPERATURE,
        "keptFor", Dimension.TIME,
        "afterStart", Dimension.TIME,
        "afterFar", Dimension.TIME,
        "far", Dimension.TEMPERATURE);
  }

  @Override
  public List<Fault> find(Rule rule, Subject subject) {
    List<Fault> faults = new ArrayList<>();
    for (Log core : subject.cores()) {
      for (Step step : List.of(Step.SMOKE, Step.CHILL)) {
        OptionalLong start = subject.into(step);
        if (start.isPresent()) {
          new Looked(rule, subject, core, step, start.getAsLong()).find(faults);
        }
      }
    }
    return faults;
  }

  /** One core in one step. */
  private static final class Looked {

    private static final long NONE = Long.MIN_VALUE;

    private final Rule rule;
    private final Subject subject;
    private final Log core;
    private final boolean heats;
    private final long start;
    private final long less;
    private final long keptFor;
    private final long far;
    private final long[] airs;
    private int begin;
    private int end;
    private int none;
    private long sum;

    Looked(Rule rule, Subject subject, Log core, Step step, long start) {
      this.rule = rule;
      this.subject = subject;
      this.core = core;
      this.heats = step == Step.SMOKE;
      this.start = start;
      this.less = rule.difference("less");
      this.keptFor = rule.millis("keptFor");
      this.far = rule.difference("far");
      Air air = Air.of(subject.lot(), step);
      this.airs = new long[air.isEmpty() ? 0 : core.size()];
      Arrays.setAll(airs, i -> air.near(core.at(i), core.level(i)).orElse(NONE));
    }

    void find(List<Fault> faults) {
      int lastFar = -1;
      int lastApart = -1;
      for (int i = 0; i < airs.length; i++) {
        lastFar = isOver(i, far) ? i : lastFar;
        lastApart = isOver(i, 2 * less) ? i : lastApart;
        int last = like(i);
        if (last > i && isTooSoon(i, lastFar, lastApart)) {
          while (last < core.last() && like(last) > last) {
            last = like(last);
          }
          faults.add(fault(i, last));
          i = last;
        }
      }
    }

    /** Further from the air than that, on the side where a core belongs. */
    private boolean isOver(int index, long apart) {
      long over = airs[index] == NONE ? 0 : core.level(index) - airs[index];
      return (heats ? -over : over) > apart;
    }

    /** A door that was opened brings the air to the core, but not for the whole way from afar. */
    private boolean isTooSoon(int index, int lastFar, int lastApart) {
      long at = core.at(index);
      boolean started = at >= start && at - start <= rule.millis("afterStart");
      return started
          || (lastFar >= 0
              && at - core.at(lastFar) <= rule.millis("afterFar")
              && hasComeItself(index, lastFar)
              && hasComeItself(index, lastApart));
    }

    /** Whether it was the core that went to the air, and not the air that came to the core. */
    private boolean hasComeItself(int index, int since) {
      return Math.abs(core.rise(since, index)) > Math.abs(airs[index] - airs[since]);
    }

    /**
     * The end of a time from a reading on in which it is like the air on average; 0 if none. Asked
     * for later and later readings, it goes over the log once.
     */
    private int like(int from) {
      begin(from);
      while (end < airs.length && (end == from || core.between(from, end - 1) < keptFor)) {
        sum += apart(end++);
      }
      while (none < end && airs[none] != NONE) {
        none++;
      }
      boolean whole = none == end && core.between(from, end - 1) >= keptFor;
      return whole && sum < less * (end - from) ? end - 1 : 0;
    }

    private void begin(int from) {
      while (begin < from && begin < end) {
        sum -= apart(begin++);
      }
      begin = from;
      end = Math.max(end, from);
      none = Math.max(none, from);
    }

    private long apart(int index) {
      return airs[index] == NONE ? 0 : Math.abs(core.level(index) - airs[index]);
    }

    private Fault fault(int first, int last) {
      return rule.fault(
              subject,
              core.place(first),
              subject.say(
                  "doubt.like-air.found",
                  "{0} as its air, from {1} to {2}",
                  subject.probe(core.track()),
                  subject.told(core, first),
                  subject.told(core, last)),
              subject.say("doubt.like-air.expected", "a core apart from its air, so soon"))
          .over(core.stretch(first, last, Stretch.Standing.IN_DOUBT));
    }
  }
}
