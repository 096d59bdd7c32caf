package org.flitchbook.reading;

import static org.flitchbook.message.Message.say;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.PriorityQueue;
import java.util.stream.Collectors;
import org.flitchbook.input.Severity;

/**
 * Joins what one probe read of one lot or place: a log pulled twice, two logs that follow each
 * other, two stretches of one. A reading that both have is taken once.
 */
final class Joining {

  private static final long A_MINUTE = 60_000;

  private final List<Series> all;
  private final Map<String, RowFaults> faults = new LinkedHashMap<>();

  Joining(List<Series> all) {
    this.all = all;
  }

  Readings.Joined joined() {
    Map<Series, List<Series>> probes =
        all.stream()
            .collect(
                Collectors.groupingBy(
                    each -> each.with("", 0, Samples.NONE),
                    LinkedHashMap::new,
                    Collectors.toList()));
    List<Series> joined = new ArrayList<>();
    for (List<Series> parts : probes.values()) {
      List<Series> read = parts.stream().filter(part -> part.samples().size() > 0).toList();
      joined.add(read.isEmpty() ? parts.get(0) : read.size() == 1 ? read.get(0) : join(read));
    }
    return new Readings.Joined(
        joined, faults.values().stream().flatMap(each -> each.faults().stream()).toList());
  }

  private Series join(List<Series> parts) {
    long precision = parts.stream().mapToLong(Series::precisionMillis).max().orElse(0);
    return parts.get(0).with(parts.get(0).file(), precision, samples(parts));
  }

  private Samples samples(List<Series> parts) {
    List<Samples.Source> sources = new ArrayList<>();
    int[] firstSource = new int[parts.size()];
    for (int part = 0; part < firstSource.length; part++) {
      firstSource[part] = sources.size();
      sources.addAll(parts.get(part).samples().sources());
    }
    Samples joined = new Samples(sources);
    int[] next = new int[parts.size()];
    PriorityQueue<Integer> waiting = new PriorityQueue<>(inTime(parts, next));
    for (int part = 0; part < next.length; part++) {
      waiting.add(part);
    }
    while (!waiting.isEmpty()) {
      int part = waiting.remove();
      Samples samples = parts.get(part).samples();
      if (!isTaken(joined, parts.get(part), next[part])) {
        joined.add(
            firstSource[part] + samples.sourceOf(next[part]), samples.rows().get(next[part]));
      }
      next[part]++;
      if (next[part] < samples.size()) {
        waiting.add(part);
      }
    }
    return joined;
  }

  /**
   * The part whose next reading is the first; of those of one time, the one that was read first.
   */
  private static Comparator<Integer> inTime(List<Series> parts, int[] next) {
    return Comparator.<Integer>comparingLong(part -> parts.get(part).samples().at(next[part]))
        .thenComparing(part -> part);
  }

  private boolean isTaken(Samples joined, Series part, int index) {
    Samples samples = part.samples();
    int before = joined.size() - 1;
    if (before < 0 || joined.at(before) != samples.at(index)) {
      return false;
    }
    boolean alike = joined.level(before) == samples.level(index);
    boolean sameFile = joined.file(before).equals(samples.file(index));
    if (!sameFile && (alike || part.precisionMillis() < A_MINUTE)) {
      tell(joined.file(before) + ":" + joined.line(before), part, index, alike);
    }
    return alike;
  }

  private void tell(String other, Series part, int index, boolean alike) {
    String file = part.samples().file(index);
    faults
        .computeIfAbsent(file, name -> new RowFaults(name))
        .add(
            alike ? "same row twice" : "time twice",
            Severity.NOTE,
            part.samples().line(index),
            part.column(),
            alike
                ? say("reading.joined.once-more", "the reading of {0} once more", other)
                : say("reading.joined.another", "another value than {0}", other),
            alike
                ? say("reading.order.once", "each once")
                : say(
                    "reading.joined.one-reading",
                    "one reading of a probe at a time; both are counted"));
  }
}
