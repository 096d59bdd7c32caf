package org.flitchbook.doubt;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.flitchbook.input.Fault;
import org.flitchbook.measure.Dimension;
import org.flitchbook.reading.Entry;

/** Entries typed long after the event; one finding a sheet, at the latest of them. */
final class LateEntry implements Finder {

  /** The lenient rule. */
  static final String NOTED = "late entry";

  private final String name;

  /**
   * Finds by the rule of that name.
   *
   * @param name one rule is lenient and one is strict; they differ by their numbers
   */
  LateEntry(String name) {
    this.name = name;
  }

  @Override
  public String name() {
    return name;
  }

  @Override
  public Map<String, Dimension> numbers() {
    return Map.of("after", Dimension.TIME, "until", Dimension.TIME);
  }

  @Override
  public List<Fault> find(Rule rule, Subject subject) {
    Map<String, List<Entry>> ofSheets = new LinkedHashMap<>();
    for (Entry entry : subject.lot().entries()) {
      if (isBetween(late(entry), rule)) {
        ofSheets.computeIfAbsent(entry.place().file(), file -> new ArrayList<>()).add(entry);
      }
    }
    return ofSheets.values().stream().map(entries -> fault(rule, subject, entries)).toList();
  }

  private static boolean isBetween(Duration late, Rule rule) {
    return late.compareTo(rule.time("after")) > 0 && late.compareTo(rule.time("until")) <= 0;
  }

  /** At the least: both times may have been written to the minute. */
  private static Duration late(Entry entry) {
    return entry.entered().map(entry.time()::shortestTo).orElse(Duration.ZERO);
  }

  private static Fault fault(Rule rule, Subject subject, List<Entry> entries) {
    Entry latest = entries.stream().max(Comparator.comparing(LateEntry::late)).orElseThrow();
    String late =
        subject.say(
            "doubt.late.found",
            "{0} entered {1} later",
            subject.what(latest.what()),
            Subject.length(late(latest)));
    return rule.fault(
        subject,
        latest.place().column("entered"),
        entries.size() == 1
            ? late
            : subject.say("doubt.late.of-several", "{0}, the latest of {1}", late, entries.size()),
        subject.say(
            "doubt.late.expected",
            "an entry at the time of the event, at most {0} later",
            rule.number("after")));
  }
}
