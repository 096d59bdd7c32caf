package org.flitchbook.doubt;

import static org.flitchbook.message.Message.say;

import java.time.Duration;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalLong;
import java.util.stream.Stream;
import org.flitchbook.json.Choice;
import org.flitchbook.message.Message;
import org.flitchbook.sheet.Step;

/**
 * Two probes of one lot that are far apart when it comes out of the smoke.
 *
 * @param above they may be so far apart
 * @param near how long before the end of the smoke a probe may have read last
 */
@Choice("probes disagree")
record ProbesDisagree(Degrees above, Duration near) implements Finder {

  /** What a probe read last before the finish. */
  private record AtFinish(ProbeLog core, int index) {

    long level() {
      return core.level(index);
    }

    Message said() {
      return core.said(index);
    }
  }

  @Override
  public Stream<Doubt> find(Subject subject) {
    OptionalLong out = subject.endOf(Step.SMOKE);
    List<AtFinish> all =
        subject.cores().stream()
            .filter(core -> out.isPresent())
            .map(core -> new AtFinish(core, core.atOrBefore(out.getAsLong())))
            .filter(each -> each.index() >= 0)
            .filter(each -> out.getAsLong() - each.core().at(each.index()) <= near.toMillis())
            .sorted(Comparator.comparing(AtFinish::level))
            .toList();
    return all.stream()
        .limit(1)
        .filter(low -> all.get(all.size() - 1).level() - low.level() > above.difference())
        .map(low -> doubt(low, all.get(all.size() - 1)));
  }

  private Doubt doubt(AtFinish low, AtFinish high) {
    return new Doubt(
        high.core().place(high.index()),
        say(
            "doubt.apart.found",
            "{0}: {1}, {2}: {3}",
            high.core().probe(),
            high.said(),
            low.core().probe(),
            low.said()),
        say("doubt.apart.expected", "probes at most {0} apart at the finish", above),
        say(
            "do.probes-disagree",
            "Check both by hand; the lower one counts for heat, the higher one for cooling."));
  }
}
