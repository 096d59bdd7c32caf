package org.flitchbook.doubt;

import static org.flitchbook.message.Message.say;

import java.time.Duration;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.json.Choice;
import org.flitchbook.measure.Level;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.What;

/**
 * A reading by hand that is far from every log of the core at that time; where it names a probe,
 * from that one.
 *
 * @param above it may be so far from the log
 * @param near how far apart in time the two may be
 */
@Choice("hand and log disagree")
record HandDisagrees(Degrees above, Duration near) implements Finder {

  private record Logged(ProbeLog core, int index, long apart) {}

  @Override
  public Stream<Doubt> find(Subject subject) {
    List<ProbeLog> cores = subject.cores();
    return subject.lot().all(What.INTERNAL_TEMPERATURE).stream()
        .flatMap(entry -> find(cores, entry).stream());
  }

  private Optional<Doubt> find(List<ProbeLog> cores, Entry entry) {
    List<ProbeLog> named =
        cores.stream().filter(core -> core.track().called().equals(entry.item())).toList();
    return (named.isEmpty() ? cores : named)
        .stream()
            .flatMap(core -> near(entry, core))
            .min(Comparator.comparing(Logged::apart))
            .filter(nearest -> nearest.apart() > above.difference())
            .map(nearest -> doubt(entry, nearest));
  }

  /** The log's readings near it in time, which may have been any within its minute. */
  private Stream<Logged> near(Entry entry, ProbeLog core) {
    long level = Level.of(entry.amount());
    long from = entry.time().earliest().toEpochMilli() - near.toMillis();
    long until = entry.time().latest().toEpochMilli() + near.toMillis();
    return IntStream.range(core.atOrAfter(from), core.atOrBefore(until) + 1)
        .mapToObj(i -> new Logged(core, i, Math.abs(core.level(i) - level)));
  }

  private Doubt doubt(Entry entry, Logged nearest) {
    return new Doubt(
        nearest.core().place(nearest.index()),
        say(
            "doubt.by-hand.found",
            "{0}: {1}, and by hand {2} ({3})",
            nearest.core().probe(),
            nearest.core().said(nearest.index()),
            entry.shown(),
            entry.place()),
        say("doubt.by-hand.expected", "at most {0} between hand and log", above),
        say(
            "do.hand-and-log-disagree",
            "Read again with another thermometer, and check both instruments."));
  }
}
