package org.flitchbook.evidence;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.book.Book;
import org.flitchbook.check.Judgement;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Track;
import org.flitchbook.reading.Day;
import org.flitchbook.reading.Entry;
import org.flitchbook.reading.Series;
import org.flitchbook.record.DayJudged;

/**
 * How far back the folders go that a lot rests on. They begin with the first in which anything of
 * it stands: an entry, one that it corrects, a reading that served it, a fault. The checks of
 * instruments go back to the last one before the lot of every instrument in use since. Where an
 * entry of an older folder corrects one that is within, they begin with that older folder.
 */
record LotDays(DayJudged judged, List<Day> days) {

  LocalDate first(Judgement judgement) {
    Lot lot = judgement.lot();
    Set<LocalDate> named = new TreeSet<>(lot.filed());
    all(lot).forEach(entry -> target(entry).ifPresent(named::add));
    Stream.concat(
            judgement.faults().stream().map(fault -> fault.place().file()),
            lot.tracks().stream().flatMap(each -> files(each.track())))
        .forEach(file -> Book.dayOf(file).ifPresent(named::add));
    return withCorrections(named.stream().findFirst().orElse(judged.day()));
  }

  private static Stream<Entry> all(Lot lot) {
    return Stream.concat(
        lot.entries().stream(),
        lot.corrections().stream().flatMap(each -> Stream.of(each.replaced(), each.by())));
  }

  private static Stream<String> files(Track track) {
    return IntStream.range(0, track.size()).mapToObj(i -> track.place(i).file()).distinct();
  }

  /** The folder of the line that an entry corrects, where it corrects one. */
  private static Optional<LocalDate> target(Entry entry) {
    return entry.corrects().isEmpty()
        ? Optional.empty()
        : Book.dayOf(entry.corrects()).or(() -> Book.dayOf(entry.place().file()));
  }

  LocalDate firstCheck(Judgement judgement, LocalDate first) {
    Instant begin = begin(judgement.lot());
    LocalDate check =
        inUse(first).stream()
            .flatMap(id -> judged.register().last(id, begin).stream())
            .flatMap(last -> Book.dayOf(last.entry().place().file()).stream())
            .min(Comparator.naturalOrder())
            .orElse(first);
    return withCorrections(check.isBefore(first) ? check : first);
  }

  /** The first time at which anything was written or read of a lot. */
  private static Instant begin(Lot lot) {
    Stream<Instant> written = lot.entries().stream().map(entry -> entry.time().earliest());
    Stream<Instant> read =
        lot.tracks().stream()
            .filter(each -> each.track().size() > 0)
            .map(each -> Instant.ofEpochMilli(each.track().earliest(0)));
    return Stream.concat(written, read).min(Comparator.naturalOrder()).orElse(Instant.MIN);
  }

  private Set<String> inUse(LocalDate from) {
    return days.stream()
        .filter(day -> !day.date().isBefore(from))
        .flatMap(
            day ->
                Stream.concat(
                    day.entries().stream().map(Entry::instrument),
                    day.series().stream().map(Series::instrument)))
        .collect(Collectors.toSet());
  }

  private LocalDate withCorrections(LocalDate first) {
    return days.stream()
        .filter(day -> day.date().isBefore(first))
        .filter(day -> day.entries().stream().anyMatch(entry -> isWithin(target(entry), first)))
        .map(day -> withCorrections(day.date()))
        .findFirst()
        .orElse(first);
  }

  private static boolean isWithin(Optional<LocalDate> day, LocalDate first) {
    return day.filter(date -> !date.isBefore(first)).isPresent();
  }
}
