package org.flitchbook.lot;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.plan.Plan;
import org.flitchbook.reading.Entry;
import org.flitchbook.reading.Samples;
import org.flitchbook.reading.Series;
import org.flitchbook.sheet.What;

/**
 * What all lots share: every entry in force and every series, up to a time. A book of years has
 * many, so each is found by what it is asked for, without looking at the others.
 */
final class Shared {

  private final Plan plan;
  private final Register register;
  private final List<Entry> actions;
  private final List<Series> series;
  private final Instant until;
  private final Map<String, List<Entry>> entriesOfLot;
  private final Map<What, List<Entry>> entriesInTime;
  private final Map<String, List<Integer>> seriesOfLot = new HashMap<>();
  private final Map<String, List<Integer>> seriesOfPlace = new HashMap<>();
  private final IdentityHashMap<Samples, Long> intervals = new IdentityHashMap<>();

  /**
   * Sorts what is there.
   *
   * @param entries in force, in the order of the files
   * @param actions what was found, held or done of no lot, and is not closed
   */
  Shared(
      Plan plan,
      Register register,
      List<Entry> entries,
      List<Entry> actions,
      List<Series> series,
      Instant until) {
    this.plan = plan;
    this.register = register;
    this.actions = actions;
    this.series = series;
    this.until = until;
    this.entriesOfLot = entries.stream().collect(Collectors.groupingBy(Entry::lot));
    this.entriesInTime =
        entries.stream()
            .sorted(Comparator.comparing(entry -> entry.time().earliest()))
            .collect(Collectors.groupingBy(Entry::what));
    for (int i = 0; i < series.size(); i++) {
      for (String lot : series.get(i).lots()) {
        seriesOfLot.computeIfAbsent(lot, code -> new ArrayList<>()).add(i);
      }
      seriesOfPlace.computeIfAbsent(series.get(i).place(), place -> new ArrayList<>()).add(i);
    }
  }

  Plan plan() {
    return plan;
  }

  Register register() {
    return register;
  }

  List<Entry> actions() {
    return actions;
  }

  Instant until() {
    return until;
  }

  /** The entries of a lot, in the order of the files. */
  List<Entry> ofLot(String code) {
    return entriesOfLot.getOrDefault(code, List.of());
  }

  /** What was read by hand from one time to another, both included, in the order of time. */
  List<Entry> during(What what, Instant from, Instant to) {
    List<Entry> all = entriesInTime.getOrDefault(what, List.of());
    int first = firstAt(all, from.truncatedTo(ChronoUnit.MILLIS));
    int after = firstAt(all, to.plusMillis(1));
    return first < after ? all.subList(first, after) : List.of();
  }

  private static int firstAt(List<Entry> inTime, Instant at) {
    int low = 0;
    int high = inTime.size();
    while (low < high) {
      int middle = (low + high) >>> 1;
      boolean isBefore = inTime.get(middle).time().earliest().isBefore(at);
      low = isBefore ? middle + 1 : low;
      high = isBefore ? high : middle;
    }
    return low;
  }

  /** The series that name a lot. */
  List<Series> seriesOf(String lot) {
    return numbers(lot, Stream.of()).mapToObj(series::get).toList();
  }

  /** The series that name a lot or one of some places, in their order. */
  List<Series> serving(String lot, Stream<String> places) {
    return numbers(lot, places).mapToObj(series::get).toList();
  }

  private IntStream numbers(String lot, Stream<String> places) {
    Set<Integer> numbers = new TreeSet<>(seriesOfLot.getOrDefault(lot, List.of()));
    places.forEach(place -> numbers.addAll(seriesOfPlace.getOrDefault(place, List.of())));
    return numbers.stream().mapToInt(number -> number);
  }

  /** The usual time between two readings, see {@link Samples#interval}. */
  long interval(Samples samples) {
    return intervals.computeIfAbsent(samples, each -> each.interval(plan.practice().gap()));
  }
}
