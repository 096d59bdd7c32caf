package org.flitchbook.lot;

import static java.util.stream.Collectors.groupingBy;
import static org.flitchbook.message.Message.say;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.flitchbook.input.Fault;
import org.flitchbook.message.Listing;
import org.flitchbook.message.Message;
import org.flitchbook.plan.Plan;
import org.flitchbook.reading.Day;
import org.flitchbook.reading.Entry;
import org.flitchbook.reading.Readings;
import org.flitchbook.reading.Series;

/**
 * All lots that the days name, by their codes. What was read of one is gathered when it is asked
 * for: of a book of years, a day needs few.
 */
public final class Lots {

  private final SortedMap<String, LotBuilder> builders = new TreeMap<>();
  private final Map<String, Lot> built = new HashMap<>();
  private final Corrections corrections;
  private final Map<String, SortedSet<LocalDate>> filed;
  private final Map<String, List<Fault>> faults;
  private final Register register;

  private Lots(
      List<LotBuilder> builders,
      Corrections corrections,
      Map<String, SortedSet<LocalDate>> filed,
      List<Fault> faults,
      Register register) {
    builders.forEach(lot -> this.builders.put(lot.code(), lot));
    this.corrections = corrections;
    this.filed = filed;
    this.faults =
        faults.stream()
            .collect(
                groupingBy(fault -> this.builders.containsKey(fault.lot()) ? fault.lot() : ""));
    this.register = register;
  }

  /** All of them. */
  public List<Lot> lots() {
    return builders.values().stream().map(this::built).toList();
  }

  /** Those of a day: something of it was filed then, it is in a step, or nobody began it. */
  public List<Lot> ofDay(LocalDate day) {
    return builders.values().stream()
        .filter(lot -> filed(lot).contains(day) || lot.isRunning() || !lot.isBegun())
        .map(this::built)
        .toList();
  }

  public Optional<Lot> lot(String code) {
    return Optional.ofNullable(builders.get(code)).map(this::built);
  }

  public Register register() {
    return register;
  }

  /** Those that touch no single lot. */
  public List<Fault> faults() {
    return faults.getOrDefault("", List.of());
  }

  private Lot built(LotBuilder lot) {
    return built.computeIfAbsent(
        lot.code(),
        code -> lot.lot(corrections.of(code), filed(lot), faults.getOrDefault(code, List.of())));
  }

  private SortedSet<LocalDate> filed(LotBuilder lot) {
    return filed.getOrDefault(lot.code(), Collections.emptySortedSet());
  }

  /**
   * Assembles every lot that the days name.
   *
   * @param days in order, up to the day judged
   * @param until readings after this are not looked at; a correction counts whatever its time,
   *     since it says what was true
   */
  public static Lots assemble(Plan plan, List<Day> days, Instant until) {
    Corrections corrections = new Corrections(all(days, Day::entries), all(days, Day::faults));
    List<Entry> entries =
        corrections.inForce().stream()
            .filter(entry -> !entry.time().earliest().isAfter(until))
            .toList();
    List<Series> read = all(days, Day::series);
    Readings.Joined joined = Readings.joined(read);
    List<Entry> actions = ReferenceCheck.openWithoutLot(entries);
    Register register = Register.of(plan, entries);
    Shared shared = new Shared(plan, register, entries, actions, joined.series(), until);
    List<LotBuilder> builders = builders(shared, entries);
    ReferenceCheck references = new ReferenceCheck(plan);
    LogReferences logs = new LogReferences(plan, builders);
    List<Fault> faults =
        logs.ofLots(
            read,
            Stream.of(
                    corrections.faults().stream(),
                    references.of(entries, actions),
                    Register.faults(plan, entries),
                    alike(builders),
                    joined.faults().stream(),
                    logs.ofLogs(read))
                .flatMap(each -> each));
    return new Lots(builders, corrections, filed(days), faults, register);
  }

  /** The times of the entries in force and the last time of each log; a corrected time is none. */
  public static Stream<Instant> times(List<Day> days) {
    return Stream.concat(
        new Corrections(all(days, Day::entries), all(days, Day::faults))
            .inForce().stream().map(entry -> entry.time().earliest()),
        days.stream().flatMap(Day::lastTimes));
  }

  private static <T> List<T> all(List<Day> days, Function<Day, List<T>> part) {
    return days.stream().flatMap(day -> part.apply(day).stream()).toList();
  }

  private static List<LotBuilder> builders(Shared shared, List<Entry> entries) {
    return entries.stream()
        .filter(entry -> !entry.lot().isEmpty())
        .collect(groupingBy(Entry::lot, TreeMap::new, Collectors.toList()))
        .entrySet()
        .stream()
        .map(lot -> new LotBuilder(shared, lot.getKey(), lot.getValue()))
        .toList();
  }

  /** Codes that differ in capitals alone are one lot, mistyped, and one file on many disks. */
  private static Stream<Fault> alike(List<LotBuilder> builders) {
    return builders.stream()
        .collect(groupingBy(lot -> lot.code().toLowerCase(Locale.ROOT)))
        .values()
        .stream()
        .filter(same -> same.size() > 1)
        .flatMap(
            same ->
                same.stream()
                    .map(
                        lot ->
                            Fault.ask(
                                "lots alike by name",
                                lot.code(),
                                lot.entries().get(0).place().column("lot"),
                                Message.of(
                                    Listing.and(same.stream().map(LotBuilder::code).toList())),
                                say("lot.alike.expected", "one spelling of each lot's code"))));
  }

  /** The days in whose folders something of a lot stands. */
  private static Map<String, SortedSet<LocalDate>> filed(List<Day> days) {
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
