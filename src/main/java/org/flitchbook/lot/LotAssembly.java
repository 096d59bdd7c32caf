package org.flitchbook.lot;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.flitchbook.input.Fault;
import org.flitchbook.plan.Plan;
import org.flitchbook.reading.Day;
import org.flitchbook.reading.Entry;
import org.flitchbook.reading.Readings;
import org.flitchbook.reading.Series;

/** Puts the readings of many days together into lots. */
final class LotAssembly {

  /** What all lots share: every entry in force and every series, up to a time. */
  record Shared(
      Plan plan, Register register, List<Entry> entries, List<Series> series, Instant until) {}

  private final List<Day> days;
  private final Corrections corrections;
  private final Shared shared;
  private final List<LotBuilder> builders;
  private final List<Fault> faults;

  LotAssembly(Plan plan, List<Day> days, Instant until) {
    this.days = days;
    this.corrections =
        new Corrections(
            days.stream().flatMap(day -> day.entries().stream()).toList(),
            days.stream().flatMap(day -> day.faults().stream()).toList());
    List<Entry> entries =
        corrections.inForce().stream()
            .filter(entry -> !entry.time().earliest().isAfter(until))
            .toList();
    RegisterReader register = new RegisterReader(plan, entries);
    List<Series> read = days.stream().flatMap(day -> day.series().stream()).toList();
    List<Fault> ofJoining = new ArrayList<>();
    List<Series> joined = Readings.joined(read, ofJoining);
    this.shared = new Shared(plan, register.register(), entries, joined, until);
    this.builders = builders();
    this.faults =
        new LogCheck(plan, read, builders)
            .faults(
                Stream.of(
                        corrections.faults(),
                        new ReferenceCheck(plan).faults(entries),
                        register.faults(),
                        ofJoining)
                    .flatMap(List::stream)
                    .toList());
  }

  private List<LotBuilder> builders() {
    Map<String, List<Entry>> ofLots =
        shared.entries().stream()
            .filter(entry -> !entry.lot().isEmpty())
            .collect(Collectors.groupingBy(Entry::lot, TreeMap::new, Collectors.toList()));
    return ofLots.entrySet().stream()
        .map(lot -> new LotBuilder(shared, lot.getKey(), lot.getValue()))
        .toList();
  }

  Lots lots() {
    Map<String, SortedSet<LocalDate>> filed = filed();
    List<Lot> lots =
        builders.stream()
            .map(
                lot ->
                    lot.lot(
                        corrections.of(lot.code()),
                        filed.getOrDefault(lot.code(), new TreeSet<>()),
                        faults))
            .toList();
    Set<String> codes = lots.stream().map(Lot::code).collect(Collectors.toSet());
    return new Lots(
        lots,
        shared.register(),
        faults.stream().filter(fault -> !codes.contains(fault.lot())).toList());
  }

  /** The days in whose folders something of a lot stands. */
  private Map<String, SortedSet<LocalDate>> filed() {
    Map<String, SortedSet<LocalDate>> filed = new HashMap<>();
    for (Day day : days) {
      Stream.concat(
              day.entries().stream().map(Entry::lot),
              day.series().stream().flatMap(series -> series.lots().stream()))
          .forEach(lot -> filed.computeIfAbsent(lot, code -> new TreeSet<>()).add(day.date()));
    }
    return filed;
  }
}
