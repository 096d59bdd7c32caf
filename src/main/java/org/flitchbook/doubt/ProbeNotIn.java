package org.flitchbook.doubt;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Stretch;
import org.flitchbook.measure.Dimension;
import org.flitchbook.sheet.Step;

/**
 * Readings of a warm room before the probe went into cold meat, and of whatever it lay in once it
 * was drawn, just before the log ends.
 */
final class ProbeNotIn implements Finder {

  @Override
  public String name() {
    return "probe not in the meat";
  }

  @Override
  public Map<String, Dimension> numbers() {
    return Map.of("atLoad", Dimension.TIME, "atEnd", Dimension.TIME);
  }

  @Override
  public List<Fault> find(Rule rule, Subject subject) {
    List<Fault> faults = new ArrayList<>();
    for (Log core : subject.cores()) {
      List<Leaps.Leap> leaps = Leaps.of(subject, core);
      late(rule, subject, core, leaps).ifPresent(faults::add);
      early(rule, subject, core, leaps).ifPresent(faults::add);
    }
    return faults;
  }

  private static Optional<Fault> late(
      Rule rule, Subject subject, Log core, List<Leaps.Leap> leaps) {
    OptionalLong loaded = subject.into(Step.SMOKE);
    return leaps.stream()
        .filter(leap -> !leap.isUp() && loaded.isPresent())
        .filter(leap -> core.at(leap.after()) - loaded.getAsLong() <= rule.millis("atLoad"))
        .reduce((first, second) -> second)
        .map(leap -> fault(rule, subject, core, 0, leap.after() - 1));
  }

  private static Optional<Fault> early(
      Rule rule, Subject subject, Log core, List<Leaps.Leap> leaps) {
    return leaps.stream()
        .filter(leap -> core.between(leap.before() + 1, core.last()) <= rule.millis("atEnd"))
        .findFirst()
        .map(leap -> fault(rule, subject, core, leap.before() + 1, core.last()));
  }

  private static Fault fault(Rule rule, Subject subject, Log core, int first, int last) {
    return rule.fault(
            subject,
            core.place(first),
            subject.probe(core.track())
                + ": "
                + subject.say(
                    "doubt.run", "{0} to {1}", subject.told(core, first), subject.told(core, last)),
            subject.say("doubt.not-in.expected", "readings of the meat"))
        .over(core.stretch(first, last, Stretch.Standing.PROBE_OUT));
  }
}
