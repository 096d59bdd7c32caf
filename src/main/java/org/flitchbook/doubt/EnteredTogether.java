package org.flitchbook.doubt;

import static org.flitchbook.message.Message.say;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.flitchbook.json.Choice;
import org.flitchbook.json.Key;
import org.flitchbook.reading.Entry;

/**
 * Entries of things that happened far apart, typed one after the other: a form filled in
 * afterwards.
 *
 * @param entries at least so many
 * @param within typed within this time
 * @param spread of what happened over more than this
 */
@Choice("entered together")
record EnteredTogether(
    @Key(format = Doubts.COUNT) Integer entries, Duration within, Duration spread)
    implements Finder {

  @Override
  public Stream<Doubt> find(Subject subject) {
    List<Entry> typed =
        subject.lot().entries().stream()
            .filter(entry -> entry.entered().isPresent())
            .sorted(Comparator.comparing(EnteredTogether::entered))
            .toList();
    List<Doubt> doubts = new ArrayList<>();
    int from = 0;
    while (from < typed.size()) {
      List<Entry> run = run(typed.subList(from, typed.size()));
      if (run.size() >= entries && apart(run).compareTo(spread) > 0) {
        doubts.add(doubt(run));
        from += run.size();
      } else {
        from++;
      }
    }
    return doubts.stream();
  }

  private static Instant entered(Entry entry) {
    return entry.entered().orElseThrow().earliest();
  }

  /** Those at the beginning that were typed together. */
  private List<Entry> run(List<Entry> typed) {
    Instant until = entered(typed.get(0)).plus(within);
    return typed.stream().takeWhile(entry -> !entered(entry).isAfter(until)).toList();
  }

  /** From the first thing that happened to the last. */
  private static Duration apart(List<Entry> run) {
    List<Instant> times = run.stream().map(entry -> entry.time().earliest()).sorted().toList();
    return Duration.between(times.get(0), times.get(times.size() - 1));
  }

  private Doubt doubt(List<Entry> run) {
    return new Doubt(
        run.get(0).place().column("entered"),
        say(
            "doubt.together.found",
            "{0} entries typed within {1}, of what happened over {2}",
            run.size(),
            Subject.length(within),
            Subject.length(apart(run))),
        say("doubt.together.expected", "each entry at the time of the event"),
        say("do.entered-together", "Write each entry when the thing happens."));
  }
}
