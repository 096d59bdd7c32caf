package org.flitchbook.doubt;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import org.flitchbook.input.Fault;
import org.flitchbook.measure.Dimension;
import org.flitchbook.sheet.Step;

/** Two probes of one lot that are far apart when it comes out of the smoke. */
final class ProbesDisagree implements Finder {

  @Override
  public String name() {
    return "probes disagree";
  }

  @Override
  public Map<String, Dimension> numbers() {
    return Map.of("above", Dimension.TEMPERATURE, "near", Dimension.TIME);
  }

  /** What a probe read last before the finish. */
  private record AtFinish(Log core, int index) {

    long level() {
      return core.level(index);
    }
  }

  @Override
  public List<Fault> find(Rule rule, Subject subject) {
    OptionalLong out = subject.endOf(Step.SMOKE);
    if (out.isEmpty()) {
      return List.of();
    }
    List<AtFinish> all =
        subject.cores().stream()
            .map(core -> new AtFinish(core, core.atOrBefore(out.getAsLong())))
            .filter(each -> each.index() >= 0)
            .filter(each -> out.getAsLong() - each.core().at(each.index()) <= rule.millis("near"))
            .sorted(Comparator.comparing(AtFinish::level))
            .toList();
    return all.size() < 2
        ? List.of()
        : compared(rule, subject, all.get(0), all.get(all.size() - 1));
  }

  private static List<Fault> compared(Rule rule, Subject subject, AtFinish low, AtFinish high) {
    if (high.level() - low.level() <= rule.difference("above")) {
      return List.of();
    }
    return List.of(
        rule.fault(
            subject,
            high.core().place(high.index()),
            subject.probe(high.core().track())
                + ": "
                + subject.told(high.core(), high.index())
                + ", "
                + subject.probe(low.core().track())
                + ": "
                + subject.told(low.core(), low.index()),
            subject.say(
                "doubt.apart.expected",
                "probes at most {0} apart at the finish",
                rule.number("above").shown())));
  }
}
