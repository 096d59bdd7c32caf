package org.flitchbook.doubt;

import static org.flitchbook.message.Message.say;

import java.time.Duration;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.json.Choice;
import org.flitchbook.measure.Level;
import org.flitchbook.measure.Quantity;
import org.flitchbook.plan.Figure;
import org.flitchbook.plan.Kind;
import org.flitchbook.plan.Limit;
import org.flitchbook.plan.Product;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;

/**
 * The smoker's air falls far and does not come back before the core is where it should be.
 *
 * @param fall it is below its hottest by more than this
 * @param keptFor for so long
 */
@Choice("fire out")
record FireOut(Degrees fall, Duration keptFor) implements Finder {

  @Override
  public Stream<Doubt> find(Subject subject) {
    return subject.lot().product().stream()
        .flatMapToLong(product -> target(product).stream())
        .boxed()
        .flatMap(target -> find(subject, target));
  }

  private Stream<Doubt> find(Subject subject, long target) {
    return subject.air(Step.SMOKE).logs().stream()
        .flatMap(
            air ->
                died(air).stream()
                    .filter(i -> isBelow(subject, air.at(i), target))
                    .mapToObj(i -> doubt(subject, air, i, target)));
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
  private OptionalInt died(ProbeLog air) {
    int hottest = 0;
    for (int i = 0; i < air.size(); i++) {
      hottest = air.level(i) > air.level(hottest) ? i : hottest;
      if (isOut(air, hottest, i)) {
        return OptionalInt.of(i);
      }
    }
    return OptionalInt.empty();
  }

  private boolean isOut(ProbeLog air, int hottest, int from) {
    return IntStream.range(from, air.size())
        .takeWhile(i -> air.rise(i, hottest) > fall.difference())
        .anyMatch(i -> air.between(from, i) >= keptFor.toMillis());
  }

  private static boolean isBelow(Subject subject, long at, long target) {
    return subject.cores().stream()
        .map(core -> IntStream.rangeClosed(0, core.atOrBefore(at)).mapToLong(core::level).max())
        .flatMapToLong(OptionalLong::stream)
        .anyMatch(hottest -> hottest < target);
  }

  private Doubt doubt(Subject subject, ProbeLog air, int index, long target) {
    return new Doubt(
        air.place(index),
        say("doubt.fire.found", "the smoker's air is down to {0} and stays there", air.said(index)),
        say("doubt.fire.expected", "a fire until the core is at {0}", subject.shown(target)),
        say("do.fire-out", "Say what was done, and what became of the lot."));
  }
}
