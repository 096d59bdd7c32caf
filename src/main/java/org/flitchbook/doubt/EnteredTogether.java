package org.flitchbook.doubt;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import org.flitchbook.input.Fault;
import org.flitchbook.measure.Dimension;
import org.flitchbook.reading.Entry;

/**
 * Entries of things that happened far apart, typed one after the other: a form filled in
 * afterwards.
 */
final class EnteredTogether implements Finder {

  @Override
  public String name() {
    return "entered together";
  }

  @Override
  public Map<String, Dimension> numbers() {
    return Map.of("entries", Dimension.NUMBER, "within", Dimension.TIME, "spread", Dimension.TIME);
  }

  @Override
  public List<Fault> find(Rule rule, Subject subject) {
    List<Entry> typed =
        subject.lot().entries().stream()
            .filter(entry -> entry.entered().isPresent())
            .sorted(Comparator.comparing(EnteredTogether::entered))
            .toList();
    List<Fault> faults = new ArrayList<>();
    int from = 0;
    while (from < typed.size()) {
      List<Entry> run = runFrom(typed.subList(from, typed.size()), rule.time("within"));
      if (run.size() >= rule.count("entries") && spread(run).compareTo(rule.time("spread")) > 0) {
        faults.add(fault(rule, subject, run));
        from += run.size();
      } else {
        from++;
      }
    }
    return faults;
  }

  private static Instant entered(Entry entry) {
    return entry.entered().orElseThrow().earliest();
  }

  private static List<Entry> runFrom(List<Entry> typed, Duration within) {
    Instant until = entered(typed.get(0)).plus(within);
    return typed.stream().takeWhile(entry -> !entered(entry).isAfter(until)).toList();
  }

  /** From the first thing that happened to the last. */
  private static Duration spread(List<Entry> run) {
    List<Instant> times = run.stream().map(entry -> entry.time().earliest()).sorted().toList();
    return Duration.between(times.get(0), times.get(times.size() - 1));
  }

  private static Fault fault(Rule rule, Subject subject, List<Entry> run) {
    return rule.fault(
        subject,
        run.get(0).place().column("entered"),
        subject.say(
            "doubt.together.found",
            "{0} entries typed within {1}, of what happened over {2}",
            run.size(),
            rule.number("within"),
            Subject.length(spread(run))),
        subject.say("doubt.together.expected", "each entry at the time of the event"));
  }
}
