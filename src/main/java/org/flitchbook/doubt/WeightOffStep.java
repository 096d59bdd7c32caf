package org.flitchbook.doubt;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.flitchbook.input.Fault;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.measure.Unit;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;

/**
 * A weight that does not follow from the one before it: another unit, another piece, or a slip of
 * the pen. A step that was not weighed is reckoned in between.
 */
final class WeightOffStep implements Finder {

  @Override
  public String name() {
    return "weight off its step";
  }

  @Override
  public Map<String, Dimension> numbers() {
    Map<String, Dimension> numbers = new HashMap<>();
    for (Step step : Step.ofWork()) {
      numbers.put(least(step), Dimension.SHARE);
      numbers.put(most(step), Dimension.SHARE);
    }
    return numbers;
  }

  private static String least(Step step) {
    return step.word() + "AtLeast";
  }

  private static String most(Step step) {
    return step.word() + "AtMost";
  }

  /**
   * What a piece weighed once a step had been done to it.
   *
   * @param after the step; empty for the green weight
   */
  private record Weighed(Optional<Step> after, Ratio grams) {}

  @Override
  public List<Fault> find(Rule rule, Subject subject) {
    List<Fault> faults = new ArrayList<>();
    Map<String, Weighed> before = new HashMap<>();
    for (Entry entry : subject.lot().entries()) {
      Weighed last = before.get(entry.piece());
      if (entry.is(What.GREEN_WEIGHT)) {
        before.put(entry.piece(), new Weighed(Optional.empty(), entry.amount().inBase()));
      } else if (entry.is(What.RIND_WEIGHT) && last != null) {
        before.put(
            entry.piece(), new Weighed(last.after(), last.grams().minus(entry.amount().inBase())));
      } else if (entry.is(What.WEIGHT) || entry.is(What.GLAZED)) {
        if (last != null && entry.is(What.WEIGHT)) {
          off(rule, subject, last, entry).ifPresent(faults::add);
        }
        before.put(entry.piece(), new Weighed(entry.sheet().step(), entry.amount().inBase()));
      }
    }
    return faults;
  }

  private static Optional<Fault> off(Rule rule, Subject subject, Weighed before, Entry entry) {
    Ratio least = Ratio.ONE;
    Ratio most = Ratio.ONE;
    for (Step step : between(before, entry)) {
      least = least.times(rule.number(least(step)).inBase());
      most = most.times(rule.number(most(step)).inBase());
    }
    if (before.grams().signum() <= 0) {
      return Optional.empty();
    }
    Ratio share = entry.amount().inBase().over(before.grams());
    return share.isBelow(least) || share.isAbove(most)
        ? Optional.of(fault(rule, subject, entry, percent(share), range(subject, least, most)))
        : Optional.empty();
  }

  /** Weighed twice in the same step, the second weight has that step's range too. */
  private static List<Step> between(Weighed before, Entry entry) {
    Step last = entry.sheet().step().orElseThrow();
    List<Step> steps =
        Step.ofWork().stream()
            .filter(step -> step.compareTo(last) <= 0)
            .filter(step -> before.after().filter(done -> step.compareTo(done) <= 0).isEmpty())
            .toList();
    return steps.isEmpty() ? List.of(last) : steps;
  }

  private static Fault fault(Rule rule, Subject subject, Entry entry, String share, String range) {
    return rule.fault(
        subject,
        entry.place().column("value"),
        subject.say("doubt.weight.found", "{0}, {1} of the weight before", entry.shown(), share),
        subject.say(
            "doubt.weight.expected",
            "{0} of it after {1}",
            range,
            subject.plan().words().word("step", entry.sheet().word())));
  }

  private static String range(Subject subject, Ratio least, Ratio most) {
    return subject.say("doubt.weight.range", "{0} to {1}", percent(least), percent(most));
  }

  private static String percent(Ratio share) {
    return new Quantity(share.times(Ratio.of(100)), Unit.PERCENT).shown();
  }
}
