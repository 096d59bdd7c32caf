package org.flitchbook.doubt;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import org.flitchbook.input.Fault;
import org.flitchbook.measure.Dimension;
import org.flitchbook.sheet.Step;

/** The smoker's air falls fast and soon comes back. */
final class LidOpen implements Finder {

  @Override
  public String name() {
    return "lid open";
  }

  @Override
  public Map<String, Dimension> numbers() {
    return Map.of(
        "fall", Dimension.TEMPERATURE,
        "in", Dimension.TIME,
        "back", Dimension.TEMPERATURE,
        "within", Dimension.TIME);
  }

  @Override
  public List<Fault> find(Rule rule, Subject subject) {
    List<Fault> faults = new ArrayList<>();
    Lid lid =
        new Lid(
            rule.difference("fall"),
            rule.millis("in"),
            rule.difference("back"),
            rule.millis("within"));
    for (Log air : Air.of(subject.lot(), Step.SMOKE).logs()) {
      Lowest lowest = new Lowest(air, rule.millis("in"));
      for (int i = 0; i < air.last(); i++) {
        int back = -air.rise(i, lowest.after(i)) > lid.fall() ? lid.back(air, i) : 0;
        if (back > 0) {
          faults.add(fault(rule, subject, air, i, back));
          i = back;
        }
      }
    }
    return faults;
  }

  /** How a lid that was opened shows: how far and fast the air falls, and how soon it is back. */
  private record Lid(long fall, long in, long back, long within) {

    /** When the air has come back after a fall that begins there; 0 where it did not fall so. */
    int back(Log air, int before) {
      for (int low = before + 1; low < air.size() && air.between(before, low) <= in; low++) {
        if (-air.rise(before, low) > fall) {
          return backFrom(air, before, low);
        }
      }
      return 0;
    }

    private int backFrom(Log air, int before, int low) {
      for (int i = low; i < air.size() && air.between(low, i) <= within; i++) {
        if (-air.rise(before, i) <= back) {
          return i;
        }
      }
      return 0;
    }
  }

  /** The lowest reading within a time behind another one, which is asked for in order. */
  private static final class Lowest {

    private final Log air;
    private final long in;
    private final Deque<Integer> rising = new ArrayDeque<>();
    private int end;

    Lowest(Log air, long in) {
      this.air = air;
      this.in = in;
    }

    int after(int before) {
      for (end = Math.max(end, before + 1); isIn(before); end++) {
        while (!rising.isEmpty() && air.rise(end, rising.getLast()) >= 0) {
          rising.removeLast();
        }
        rising.addLast(end);
      }
      while (!rising.isEmpty() && rising.getFirst() <= before) {
        rising.removeFirst();
      }
      return rising.isEmpty() ? before : rising.getFirst();
    }

    private boolean isIn(int before) {
      return end < air.size() && air.between(before, end) <= in;
    }
  }

  private static Fault fault(Rule rule, Subject subject, Log air, int before, int back) {
    return rule.fault(
        subject,
        air.place(before),
        subject.say(
            "doubt.lid.found",
            "the smoker's air fell from {0} and was back to {1}",
            subject.told(air, before),
            subject.told(air, back)),
        subject.say("doubt.lid.expected", "a closed smoker"));
  }
}
