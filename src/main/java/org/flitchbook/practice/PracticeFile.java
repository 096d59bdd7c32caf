package org.flitchbook.practice;

import static org.flitchbook.message.Message.say;

import java.time.Duration;
import java.util.Optional;
import java.util.function.Function;
import org.flitchbook.json.Binder;
import org.flitchbook.json.Format;
import org.flitchbook.json.Key;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.message.Message;

/**
 * {@code templates/practice.json} as it is written, each group with why it is so and its source.
 */
record PracticeFile(
    @Key(optional = true) int flitchbook,
    String title,
    String made,
    Gap gap,
    SteadyClock steadyClock,
    SetBack setBack,
    FutureTime futureTime,
    Optional<OtherDay> otherDay,
    Share nearMiss,
    Time airBeside,
    Share leapEdge,
    Optional<Handover> handover,
    Teaspoon teaspoon,
    CureShares cureShares,
    DayCure dayCure) {

  static final Binder BINDER =
      Binder.PLAIN
          .with("count", count())
          .with("mass", above0(Dimension.MASS, mass -> mass))
          .with("share", above0(Dimension.SHARE, share -> share))
          .with(Ratio.class, above0(Dimension.SHARE, Quantity::inBase))
          .with(Duration.class, above0(Dimension.TIME, PracticeFile::duration));

  record Reason(String why, String source) {}

  record Gap(@Key(inline = true) Practice.Gap gap, @Key(inline = true) Reason reason) {}

  record SteadyClock(
      @Key(inline = true) Practice.SteadyClock clock, @Key(inline = true) Reason reason) {}

  record SetBack(@Key(inline = true) Practice.SetBack setBack, @Key(inline = true) Reason reason) {}

  record FutureTime(@Key(format = "count") int daysAhead, @Key(inline = true) Reason reason) {}

  record OtherDay(@Key(format = "count") int daysApart, @Key(inline = true) Reason reason) {}

  record Share(Ratio below, @Key(inline = true) Reason reason) {}

  record Time(Duration time, @Key(inline = true) Reason reason) {}

  record Handover(
      @Key(inline = true) Practice.Handover handover, @Key(inline = true) Reason reason) {}

  record Teaspoon(
      @Key(inline = true) Practice.Teaspoon teaspoon, @Key(inline = true) Reason reason) {}

  record CureShares(
      @Key(inline = true) Practice.CureShares shares, @Key(inline = true) Reason reason) {}

  record DayCure(@Key(inline = true) Practice.DayCure cure, @Key(inline = true) Reason reason) {}

  Practice practice() {
    return new Practice(
        gap.gap(),
        steadyClock.clock(),
        setBack.setBack(),
        futureTime.daysAhead(),
        otherDay.map(OtherDay::daysApart),
        nearMiss.below(),
        airBeside.time(),
        leapEdge.below(),
        handover.map(Handover::handover),
        teaspoon.teaspoon(),
        cureShares.shares(),
        dayCure.cure());
  }

  private static <T> Format<T> above0(Dimension dimension, Function<Quantity, T> value) {
    Message expected = say("practice.above-zero", "{0} above 0", dimension);
    return Format.of(
        expected,
        text ->
            Quantity.parse(text)
                .filter(it -> it.dimension() == dimension && it.value().signum() > 0)
                .map(value));
  }

  private static Format<Integer> count() {
    return Format.of(
        say("practice.count", "a whole number above 0"),
        text ->
            Quantity.parse(text)
                .filter(it -> it.dimension() == Dimension.NUMBER)
                .map(Quantity::value)
                .filter(it -> it.signum() > 0 && it.rounded(0).compareTo(it.rounded(3)) == 0)
                .map(it -> it.rounded(0).intValueExact()));
  }

  private static Duration duration(Quantity time) {
    return Duration.ofSeconds(time.inBase().rounded(0).longValueExact());
  }
}
