package org.flitchbook.doubt;

import static org.flitchbook.message.Message.say;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.json.Choice;
import org.flitchbook.measure.Level;
import org.flitchbook.measure.Quantity;
import org.flitchbook.plan.Figure;
import org.flitchbook.plan.Kind;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;

/** The smoker's air. */
sealed interface SmokerRule extends Finder permits SmokerRule.LidOpen, SmokerRule.FireOut {

  /**
   * The smoker's air falls fast and soon comes back.
   *
   * @param fall it falls by more than this
   * @param in within this time
   * @param back it has come back where it is at most so far below where it was
   * @param within so soon after it had fallen
   */
  @Choice("lid open")
  record LidOpen(Degrees fall, Duration in, Degrees back, Duration within) implements SmokerRule {

    @Override
    public Stream<Doubt> find(Subject subject) {
      return subject.air(Step.SMOKE).logs().stream().flatMap(this::find);
    }

    private Stream<Doubt> find(ProbeLog air) {
      List<Doubt> doubts = new ArrayList<>();
      for (int i = 0; i < air.last(); i++) {
        int before = i;
        int low = first(air, i, in, at -> -air.rise(before, at) > fall.difference());
        int again =
            low == 0
                ? 0
                : first(air, low, within, at -> -air.rise(before, at) <= back.difference());
        if (again > 0) {
          doubts.add(doubt(air, i, again));
          i = again;
        }
      }
      return doubts.stream();
    }

    /** The first reading from one on, within a time, for which a test holds; 0 if none. */
    private static int first(ProbeLog air, int from, Duration within, IntPredicate test) {
      return IntStream.range(from, air.size())
          .takeWhile(i -> air.between(from, i) <= within.toMillis())
          .filter(test)
          .findFirst()
          .orElse(0);
    }

    private Doubt doubt(ProbeLog air, int before, int again) {
      return new Doubt(
          air.place(before),
          say(
              "doubt.lid.found",
              "the smoker's air fell from {0} and was back to {1}",
              air.said(before),
              air.said(again)),
          say("doubt.lid.expected", "a closed smoker"),
          say("do.lid-open", "Keep it short."));
    }
  }

  /**
   * The smoker's air falls far and does not come back before the core is where it should be.
   *
   * @param fall it is below its hottest by more than this
   * @param keptFor for so long
   */
  @Choice("fire out")
  record FireOut(Degrees fall, Duration keptFor) implements SmokerRule {

    @Override
    public Stream<Doubt> find(Subject subject) {
      Stream<Long> wanted = subject.limits().flatMap(FireOut::wanted).map(Level::of);
      return wanted.max(Comparator.naturalOrder()).stream()
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

    /** What a limit asks of the core in the heat. */
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
          say(
              "doubt.fire.found",
              "the smoker's air is down to {0} and stays there",
              air.said(index)),
          say("doubt.fire.expected", "a fire until the core is at {0}", subject.shown(target)),
          say("do.fire-out", "Say what was done, and what became of the lot."));
    }
  }
}
