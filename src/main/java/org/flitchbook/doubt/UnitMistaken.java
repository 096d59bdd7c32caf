package org.flitchbook.doubt;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.stream.IntStream;
import org.flitchbook.input.Fault;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Unit;
import org.flitchbook.sheet.Step;

/**
 * A log said to be in °F that begins as cold meat does in °C, or one said to be in °C that begins
 * or ends as meat does in °F.
 */
final class UnitMistaken implements Finder {

  @Override
  public String name() {
    return "unit mistaken";
  }

  @Override
  public Map<String, Dimension> numbers() {
    return Map.of(
        "coldFrom", Dimension.TEMPERATURE,
        "coldTo", Dimension.TEMPERATURE,
        "warm", Dimension.TEMPERATURE,
        "hot", Dimension.TEMPERATURE,
        "atLoad", Dimension.TIME);
  }

  @Override
  public List<Fault> find(Rule rule, Subject subject) {
    return subject.cores().stream()
        .filter(core -> core.size() > 0)
        .flatMap(core -> mistaken(rule, subject, core).stream())
        .toList();
  }

  private static Optional<Fault> mistaken(Rule rule, Subject subject, Log core) {
    Unit unit = core.track().unit();
    OptionalInt found = unit == Unit.FAHRENHEIT ? cold(rule, core) : hot(rule, subject, core);
    return found.stream()
        .mapToObj(
            i ->
                rule.fault(
                    subject,
                    core.place(i),
                    subject.say(
                        "doubt.unit.found",
                        "{0}: {1}, read as {2}",
                        subject.probe(core.track()),
                        subject.told(core, i),
                        unit),
                    subject.say("doubt.unit.expected", "a core as meat has it")))
        .findFirst();
  }

  private static OptionalInt cold(Rule rule, Log core) {
    boolean cold = core.level(0) >= rule.level("coldFrom") && core.level(0) <= rule.level("coldTo");
    return cold ? OptionalInt.of(0) : OptionalInt.empty();
  }

  private static OptionalInt hot(Rule rule, Subject subject, Log core) {
    OptionalLong loaded = subject.into(Step.SMOKE);
    boolean warm =
        core.level(0) > rule.level("warm")
            && loaded.isPresent()
            && core.at(0) - loaded.getAsLong() <= rule.millis("atLoad");
    return warm
        ? OptionalInt.of(0)
        : IntStream.range(0, core.size())
            .filter(i -> core.level(i) > rule.level("hot"))
            .findFirst();
  }
}
