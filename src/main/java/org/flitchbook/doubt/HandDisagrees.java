package org.flitchbook.doubt;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.input.Fault;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Level;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.What;

/**
 * A reading by hand that is far from every log of the core at that time; where it names a probe,
 * from that one.
 */
final class HandDisagrees implements Finder {

  @Override
  public String name() {
    return "hand and log disagree";
  }

  @Override
  public Map<String, Dimension> numbers() {
    return Map.of("above", Dimension.TEMPERATURE, "near", Dimension.TIME);
  }

  private record Logged(Log core, int index, long apart) {}

  @Override
  public List<Fault> find(Rule rule, Subject subject) {
    return subject.lot().all(What.INTERNAL_TEMPERATURE).stream()
        .flatMap(entry -> find(rule, subject, entry).stream())
        .toList();
  }

  private static Optional<Fault> find(Rule rule, Subject subject, Entry entry) {
    List<Log> named =
        subject.cores().stream()
            .filter(core -> core.track().called().equals(entry.item()))
            .toList();
    return (named.isEmpty() ? subject.cores() : named)
        .stream()
            .flatMap(core -> near(rule, entry, core))
            .min(Comparator.comparing(Logged::apart))
            .filter(nearest -> nearest.apart() > rule.difference("above"))
            .map(nearest -> fault(rule, subject, entry, nearest));
  }

  /** The log's readings near it in time, which may have been any within its minute. */
  private static Stream<Logged> near(Rule rule, Entry entry, Log core) {
    long level = Level.of(entry.amount());
    long from = entry.time().earliest().toEpochMilli() - rule.millis("near");
    long until = entry.time().latest().toEpochMilli() + rule.millis("near");
    return IntStream.range(core.atOrAfter(from), core.atOrBefore(until) + 1)
        .mapToObj(i -> new Logged(core, i, Math.abs(core.level(i) - level)));
  }

  private static Fault fault(Rule rule, Subject subject, Entry entry, Logged nearest) {
    return rule.fault(
        subject,
        nearest.core().place(nearest.index()),
        subject.say(
            "doubt.by-hand.found",
            "{0}: {1}, and by hand {2} ({3})",
            subject.probe(nearest.core().track()),
            subject.told(nearest.core(), nearest.index()),
            entry.shown(),
            entry.place()),
        subject.say(
            "doubt.by-hand.expected",
            "at most {0} between hand and log",
            rule.number("above").shown()));
  }
}
