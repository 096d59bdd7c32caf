package org.flitchbook.doubt;

import static org.flitchbook.message.Message.say;

import java.time.Duration;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.flitchbook.json.Choice;
import org.flitchbook.message.Message;
import org.flitchbook.reading.Entry;

/**
 * Entries typed long after the event; one finding a sheet, at the latest of them. One rule is
 * lenient and one is strict; they differ by their numbers.
 *
 * @param after an entry may be typed so long after the event
 * @param until of one typed later than this the rule says nothing
 */
@Choice({LateEntry.LENIENT, "entered days later"})
record LateEntry(String rule, Duration after, Duration until) implements Finder {

  static final String LENIENT = "late entry";

  @Override
  public Stream<Doubt> find(Subject subject) {
    return subject.lot().entries().stream()
        .filter(this::isLate)
        .collect(
            Collectors.groupingBy(
                entry -> entry.place().file(), LinkedHashMap::new, Collectors.toList()))
        .values()
        .stream()
        .map(entries -> doubt(entries));
  }

  private boolean isLate(Entry entry) {
    return late(entry).compareTo(after) > 0 && late(entry).compareTo(until) <= 0;
  }

  /** At the least: both times may have been written to the minute. */
  private static Duration late(Entry entry) {
    return entry.entered().map(entry.time()::shortestTo).orElse(Duration.ZERO);
  }

  private Doubt doubt(List<Entry> entries) {
    Entry latest = entries.stream().max(Comparator.comparing(LateEntry::late)).orElseThrow();
    Message late =
        say(
            "doubt.late.found",
            "{0} entered {1} later",
            latest.what(),
            Subject.length(late(latest)));
    return new Doubt(
        latest.place().column("entered"),
        entries.size() == 1
            ? late
            : say("doubt.late.of-several", "{0}, the latest of {1}", late, entries.size()),
        say(
            "doubt.late.expected",
            "an entry at the time of the event, at most {0} later",
            Subject.length(after)),
        rule.equals(LENIENT)
            ? say("do.late-entry", "Write each entry when the thing happens.")
            : say(
                "do.entered-days-later",
                "Say what the entry was copied from, and keep that paper."));
  }
}
