package org.flitchbook.doubt;

import static org.flitchbook.message.Message.say;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.flitchbook.json.Choice;
import org.flitchbook.json.Key;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.message.Message;
import org.flitchbook.reading.Entry;

/** How entries were written. */
sealed interface EntryRule extends Finder
    permits EntryRule.EnteredTogether,
        EntryRule.LateEntry,
        EntryRule.EnteredBefore,
        EntryRule.SameValue,
        EntryRule.RoundedReadings {

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
      implements EntryRule {

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

  /**
   * Entries typed long after the event; one finding a sheet, at the latest of them. One rule is
   * lenient and one is strict; they differ by their numbers.
   *
   * @param after an entry may be typed so long after the event
   * @param until of one typed later than this the rule says nothing
   */
  @Choice({LateEntry.LENIENT, "entered days later"})
  record LateEntry(String rule, Duration after, Duration until) implements EntryRule {

    static final String LENIENT = "late entry";

    @Override
    public Stream<Doubt> find(Subject subject) {
      return subject
          .rows()
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

  /** Typed before the thing happened: one of the two times is wrong. */
  @Choice("entered before it happened")
  record EnteredBefore() implements EntryRule {

    @Override
    public Stream<Doubt> find(Subject subject) {
      return subject.rows().filter(EnteredBefore::isEarly).map(EnteredBefore::doubt);
    }

    private static boolean isEarly(Entry entry) {
      return entry.entered().filter(typed -> typed.isBefore(entry.time())).isPresent();
    }

    private static Doubt doubt(Entry entry) {
      return new Doubt(
          entry.place().column("entered"),
          say(
              "doubt.early.found",
              "{0} entered {1} before it happened",
              entry.what(),
              Subject.length(entry.entered().orElseThrow().writtenTo(entry.time()))),
          say("doubt.early.expected", "an entry at the time of the event, or after it"),
          say(
              "do.entered-before-it-happened",
              "Find out which of the two times is wrong, and correct the entry."));
    }
  }

  /**
   * The same value by hand time after time: a pattern for the reviewer, not an accusation.
   *
   * @param times it is one from so many on
   */
  @Choice("same value again")
  record SameValue(@Key(format = Doubts.COUNT) Integer times) implements EntryRule {

    @Override
    public Stream<Doubt> find(Subject subject) {
      return subject.handReadings().stream()
          .flatMap(
              read ->
                  Run.alike(read.size(), i -> read.get(i).shown().equals(read.get(i - 1).shown()))
                      .filter(run -> run.size() >= times)
                      .map(run -> doubt(read.get(run.first()), run.size())));
    }

    private Doubt doubt(Entry first, int running) {
      return new Doubt(
          first.place().column("value"),
          say(
              "doubt.same.found",
              "{0} written {1} times running for {2}",
              first.shown(),
              running,
              first.what()),
          say("doubt.same.expected", "fewer than {0} running", times),
          say("do.same-value-again", "Read the instrument each time, and write what it shows."));
    }
  }

  /**
   * Readings in tenths that nearly all end in 0 or 5 were not read off to a tenth.
   *
   * @param readings of at least so many
   * @param share at least this share ends so
   */
  @Choice("rounded readings")
  record RoundedReadings(
      @Key(format = Doubts.COUNT) Integer readings,
      @Key(dimension = Dimension.SHARE) Quantity share)
      implements EntryRule {

    private static final Pattern IN_TENTHS = Pattern.compile("-?\\d+[.,]\\d");
    private static final Pattern ROUND = Pattern.compile(".*[05]");

    @Override
    public Stream<Doubt> find(Subject subject) {
      return subject.handReadings().stream()
          .map(read -> matching(IN_TENTHS, read))
          .filter(tenths -> tenths.size() >= readings)
          .filter(tenths -> !Ratio.of(round(tenths), tenths.size()).isBelow(share.inBase()))
          .map(tenths -> doubt(tenths));
    }

    private static List<Entry> matching(Pattern pattern, List<Entry> entries) {
      return entries.stream().filter(entry -> pattern.matcher(entry.value()).matches()).toList();
    }

    private static int round(List<Entry> tenths) {
      return matching(ROUND, tenths).size();
    }

    private Doubt doubt(List<Entry> tenths) {
      return new Doubt(
          tenths.get(0).place().column("value"),
          say(
              "doubt.rounded.found",
              "{0} of {1} readings of {2} end in 0 or 5",
              round(tenths),
              tenths.size(),
              tenths.get(0).what()),
          say("doubt.rounded.expected", "tenths as the instrument shows them"),
          say("do.rounded-readings", "Write the tenths that the instrument shows."));
    }
  }
}
