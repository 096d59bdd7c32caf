package org.flitchbook.doubt;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.stream.Stream;
import org.flitchbook.input.Fault;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Level;
import org.flitchbook.measure.Quantity;
import org.flitchbook.plan.Figure;
import org.flitchbook.plan.Kind;
import org.flitchbook.plan.Limit;
import org.flitchbook.plan.Product;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;

/** The smoker's air falls far and does not come back before the core is where it should be. */
final class FireOut implements Finder {

  @Override
  public String name() {
    return "fire out";
  }

  @Override
  public Map<String, Dimension> numbers() {
    return Map.of("fall", Dimension.TEMPERATURE, "keptFor", Dimension.TIME);
  }

  @Override
  public List<Fault> find(Rule rule, Subject subject) {
    OptionalLong target = subject.lot().product().map(FireOut::target).orElse(OptionalLong.empty());
    List<Fault> faults = new ArrayList<>();
    if (target.isPresent()) {
      for (Log air : Air.of(subject.lot(), Step.SMOKE).logs()) {
        died(rule, air)
            .filter(i -> isBelow(subject, air.at(i), target.getAsLong()))
            .ifPresent(i -> faults.add(fault(rule, subject, air, i, target.getAsLong())));
      }
    }
    return faults;
  }

  /** The hottest that any limit asks of the core in the heat. */
  private static OptionalLong target(Product product) {
    return product.limits().stream()
        .map(Limit::kind)
        .flatMap(FireOut::wanted)
        .mapToLong(Level::of)
        .max();
  }

  private static Stream<Quantity> wanted(Kind kind) {
    if (kind instanceof Kind.Bound bound
        && bound.figure() == Figure.PEAK_INTERNAL_TEMPERATURE
        && !bound.ceiling()) {
      return Stream.of(bound.limit());
    }
    return kind instanceof Kind.Span span && span.what() == What.INTERNAL_TEMPERATURE
        ? span.stages().stream().filter(stage -> !stage.falling()).map(Kind.Stage::to)
        : Stream.of();
  }

  /** The first reading that is so far below the hottest before it, and stays there. */
  private static Optional<Integer> died(Rule rule, Log air) {
    long fall = rule.difference("fall");
    int hottest = 0;
    for (int i = 0; i < air.size(); i++) {
      hottest = air.level(i) > air.level(hottest) ? i : hottest;
      if (air.rise(i, hottest) > fall && isOut(rule, air, hottest, i)) {
        return Optional.of(i);
      }
    }
    return Optional.empty();
  }

  private static boolean isOut(Rule rule, Log air, int hottest, int from) {
    for (int i = from; i < air.size(); i++) {
      if (air.rise(i, hottest) <= rule.difference("fall")) {
        return false;
      }
      if (air.between(from, i) >= rule.millis("keptFor")) {
        return true;
      }
    }
    return false;
  }

  private static boolean isBelow(Subject subject, long at, long target) {
    return subject.cores().stream()
        .anyMatch(core -> core.atOrBefore(at) >= 0 && hottest(core, at) < target);
  }

  private static long hottest(Log core, long at) {
    long hottest = Long.MIN_VALUE;
    for (int i = 0; i < core.size() && core.at(i) <= at; i++) {
      hottest = Math.max(hottest, core.level(i));
    }
    return hottest;
  }

  private static Fault fault(Rule rule, Subject subject, Log air, int index, long target) {
    return rule.fault(
        subject,
        air.place(index),
        subject.say(
            "doubt.fire.found",
            "the smoker's air is down to {0} and stays there",
            subject.told(air, index)),
        subject.say(
            "doubt.fire.expected", "a fire until the core is at {0}", subject.shown(target)));
  }
}
