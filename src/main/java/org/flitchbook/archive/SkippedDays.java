package org.flitchbook.archive;

import static org.flitchbook.message.Message.say;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import org.flitchbook.book.Book;
import org.flitchbook.ledger.Event;
import org.flitchbook.ledger.Ledger;
import org.flitchbook.message.Listing;
import org.flitchbook.message.Message;

/**
 * The days of a book that were not closed in their turn, in order.
 *
 * @param neverClosed with entries, and without a record
 * @param closedLate first closed after a later day
 * @param outdated closed on other sheets or logs than a later close of an earlier day has read
 */
public record SkippedDays(
    List<LocalDate> neverClosed, List<LocalDate> closedLate, List<LocalDate> outdated) {

  public static final SkippedDays NONE = new SkippedDays(List.of(), List.of(), List.of());

  public SkippedDays {
    neverClosed = List.copyOf(neverClosed);
    closedLate = List.copyOf(closedLate);
    outdated = List.copyOf(outdated);
  }

  /** Those of a book before a day, and what was closed late up to now. */
  public static SkippedDays before(LocalDate day, Book book, Ledger ledger) {
    List<Event> closes = closes(ledger);
    SortedSet<LocalDate> closed = new TreeSet<>();
    SortedSet<LocalDate> late = new TreeSet<>();
    for (Event each : closes) {
      LocalDate date = each.day().orElseThrow();
      if (closed.add(date) && !closed.last().equals(date)) {
        late.add(date);
      }
    }
    List<LocalDate> open =
        book.daysWithEntries().stream()
            .filter(date -> date.isBefore(day) && !closed.contains(date))
            .toList();
    return new SkippedDays(open, List.copyOf(late), outdated(closes));
  }

  /** What concerns the close of a day: days skipped before it, and later ones closed already. */
  public static SkippedDays closing(LocalDate day, Book book, Ledger ledger) {
    SkippedDays all = before(day, book, ledger);
    boolean isLate =
        all.closedLate.contains(day)
            || (closes(ledger).stream().noneMatch(each -> each.isOf(day))
                && closes(ledger).stream().anyMatch(each -> isAfter(each, day)));
    return new SkippedDays(
        all.neverClosed,
        isLate ? List.of(day) : List.of(),
        all.outdated.stream().filter(day::isBefore).toList());
  }

  private static List<Event> closes(Ledger ledger) {
    return RecordList.of(ledger).closes().stream().map(line -> line.event()).toList();
  }

  private static boolean isAfter(Event close, LocalDate day) {
    return close.day().filter(day::isBefore).isPresent();
  }

  private static List<LocalDate> outdated(List<Event> closes) {
    Map<LocalDate, Integer> last = new TreeMap<>();
    for (int i = 0; i < closes.size(); i++) {
      last.put(closes.get(i).day().orElseThrow(), i);
    }
    return last.entrySet().stream()
        .filter(
            each ->
                closes.subList(each.getValue(), closes.size()).stream()
                    .anyMatch(later -> readOther(closes.get(each.getValue()), later)))
        .map(Map.Entry::getKey)
        .toList();
  }

  private static boolean readOther(Event close, Event ofEarlierDay) {
    LocalDate until = ofEarlierDay.day().orElseThrow();
    return isAfter(close, until) && !read(close, until).equals(read(ofEarlierDay, until));
  }

  /** The files of the days up to one, with their hashes. */
  private static Map<String, String> read(Event close, LocalDate until) {
    Map<String, String> read = new TreeMap<>(close.inputs());
    read.keySet().removeIf(file -> Book.dayOf(file).filter(day -> !day.isAfter(until)).isEmpty());
    return read;
  }

  /** The three lists as a tree for JSON, each day as {@code 2026-02-24}. */
  public Map<String, Object> json() {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("neverClosed", neverClosed.stream().map(LocalDate::toString).toList());
    tree.put("closedLate", closedLate.stream().map(LocalDate::toString).toList());
    tree.put("outdated", outdated.stream().map(LocalDate::toString).toList());
    return tree;
  }

  /** On a line each; no line where no day was skipped. */
  public List<Message> lines() {
    List<Message> lines = new ArrayList<>();
    days(neverClosed)
        .map(days -> say("archive.days.never", "With entries, and never closed: {0}.", days))
        .ifPresent(lines::add);
    days(closedLate)
        .map(days -> say("archive.days.late", "Closed after a later day: {0}.", days))
        .ifPresent(lines::add);
    days(outdated)
        .map(
            days ->
                say(
                    "archive.days.outdated",
                    "Closed before sheets or logs changed that an earlier day was closed with;"
                        + " close again: {0}.",
                    days))
        .ifPresent(lines::add);
    return lines;
  }

  private static Optional<Listing> days(List<LocalDate> days) {
    return Optional.of(days).filter(some -> !some.isEmpty()).map(Listing::days);
  }
}
