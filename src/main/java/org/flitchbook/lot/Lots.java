package org.flitchbook.lot;

import static org.flitchbook.message.Message.say;

import java.time.Instant;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
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
 * All lots that the days name.
 *
 * @param lots by their codes
 * @param faults those that touch no single lot
 */
public record Lots(List<Lot> lots, Register register, List<Fault> faults) {

  /**
   * What all lots share: every entry in force and every series, up to a time.
   *
   * @param actions what was found, held or done of no lot, and is not closed
   */
  record Shared(
      Plan plan,
      Register register,
      List<Entry> entries,
      List<Entry> actions,
      List<Series> series,
      Instant until) {}

  public Lots {
    lots = List.copyOf(lots);
    faults = List.copyOf(faults);
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
    List<LotBuilder> builders = builders(shared);
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
    Map<String, SortedSet<LocalDate>> filed = filed(days);
    return new Lots(
        builders.stream()
            .map(
                lot ->
                    lot.lot(
                        corrections.of(lot.code()),
                        filed.getOrDefault(lot.code(), new TreeSet<>()),
                        faults))
            .toList(),
        register,
        faults.stream()
            .filter(fault -> builders.stream().noneMatch(lot -> lot.code().equals(fault.lot())))
            .toList());
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

  private static List<LotBuilder> builders(Shared shared) {
    return shared.entries().stream()
        .filter(entry -> !entry.lot().isEmpty())
        .collect(Collectors.groupingBy(Entry::lot, TreeMap::new, Collectors.toList()))
        .entrySet()
        .stream()
        .map(lot -> new LotBuilder(shared, lot.getKey(), lot.getValue()))
        .toList();
  }

  /** Codes that differ in capitals alone are one lot, mistyped, and one file on many disks. */
  private static Stream<Fault> alike(List<LotBuilder> builders) {
    return builders.stream()
        .collect(Collectors.groupingBy(lot -> lot.code().toLowerCase(Locale.ROOT)))
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

  public Optional<Lot> lot(String code) {
    return lots.stream().filter(lot -> lot.code().equals(code)).findFirst();
  }
}
