package org.flitchbook.doubt;

import static org.flitchbook.message.Message.say;

import java.time.Duration;
import java.util.OptionalLong;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.json.Choice;
import org.flitchbook.measure.Unit;
import org.flitchbook.sheet.Step;

/**
 * A log said to be in °F that begins as cold meat does in °C, or one said to be in °C that begins
 * or ends as meat does in °F.
 *
 * @param coldFrom the coldest at which a log in °F begins so
 * @param coldTo the warmest
 * @param warm a log in °C begins so above this, at most {@code atLoad} after the lot went in
 * @param hot no core in °C is above this
 */
@Choice("unit mistaken")
record UnitMistaken(Degrees coldFrom, Degrees coldTo, Degrees warm, Degrees hot, Duration atLoad)
    implements Finder.OfCore {

  @Override
  public Stream<Doubt> find(Subject subject, ProbeLog core) {
    OptionalLong loaded = subject.into(Step.SMOKE);
    boolean atLoad =
        core.size() > 0
            && loaded.isPresent()
            && core.at(0) - loaded.getAsLong() <= this.atLoad.toMillis();
    IntPredicate isMistaken =
        core.track().unit() == Unit.FAHRENHEIT
            ? i -> i == 0 && core.level(0) >= coldFrom.level() && core.level(0) <= coldTo.level()
            : i -> core.level(i) > (i == 0 && atLoad ? warm : hot).level();
    return IntStream.range(0, core.size())
        .filter(isMistaken)
        .limit(1)
        .mapToObj(i -> doubt(core, i));
  }

  private static Doubt doubt(ProbeLog core, int index) {
    return new Doubt(
        core.place(index),
        say(
            "doubt.unit.found",
            "{0}: {1}, read as {2}",
            core.probe(),
            core.said(index),
            core.track().unit()),
        say("doubt.unit.expected", "a core as meat has it"),
        say("do.unit-mistaken", "Look at the logger's unit, and write it into logs.json."));
  }
}
