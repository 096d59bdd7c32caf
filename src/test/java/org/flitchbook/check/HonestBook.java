package org.flitchbook.check;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.flitchbook.Golden;
import org.flitchbook.book.Book;
import org.flitchbook.book.BookFolder;
import org.flitchbook.book.PlannedBook;
import org.flitchbook.input.Fault;
import org.flitchbook.input.SourceFile;
import org.flitchbook.judging.Judged;
import org.flitchbook.judging.Judging;
import org.flitchbook.record.DayJudged;

/**
 * A whole book that an honest and careful maker kept, with readings of what is known to meet every
 * limit, and what was found of the whole book and of one of its days.
 *
 * @param runs what truly was
 * @param day the one that is judged by itself
 * @param asked the rules by which something is open
 * @param missed the limits that are not met, not shown, or at the end still pending
 */
record HonestBook(
    int number,
    Set<Habit> habits,
    List<TrueRun> runs,
    NavigableMap<LocalDate, List<SourceFile>> days,
    LocalDate day,
    Set<String> asked,
    Set<String> missed) {

  private static final String BEFORE = " (on a day before)";

  /** Not met by itself as soon as anything else is open or missed. */
  private static final String REVIEW = "review.before-dispatch not met";

  private static final PlannedBook PLANNED = PlannedBook.of(book(new TreeMap<>()));

  static HonestBook of(long seed, int number) {
    return new HonestMaker(seed, number).book();
  }

  /** Judged, the whole and the day. */
  static HonestBook judged(
      int number,
      Set<Habit> habits,
      List<TrueRun> runs,
      NavigableMap<LocalDate, List<SourceFile>> days,
      LocalDate day) {
    PlannedBook planned = new PlannedBook(book(days), PLANNED.versions(), PLANNED.faults());
    DayJudged whole = found(Judging.book(planned));
    DayJudged before = found(Judging.day(planned, day, Optional.empty()));
    Set<String> missed = both(missed(whole), missed(before));
    whole.judgements().stream()
        .filter(lot -> lot.verdict() == Verdict.PENDING)
        .forEach(lot -> missed.add("the lot is pending at the end"));
    Set<String> asked = both(asked(whole), asked(before));
    if (asked.size() + missed.size() > 1) {
      missed.removeIf(each -> each.startsWith(REVIEW));
    }
    return new HonestBook(number, habits, runs, days, day, asked, missed);
  }

  /** The same book without some files. */
  HonestBook without(Predicate<String> name) {
    NavigableMap<LocalDate, List<SourceFile>> left = new TreeMap<>(days);
    left.replaceAll(
        (date, files) -> files.stream().filter(file -> !name.test(file.name())).toList());
    return judged(number, habits, runs, left, day);
  }

  private static Book book(NavigableMap<LocalDate, List<SourceFile>> days) {
    SourceFile plan = SourceFile.of(BookFolder.PLAN, plan().getBytes(UTF_8));
    List<SourceFile> templates = BookFolder.toolTemplates();
    Path folder = Path.of("honest");
    return new Book(folder, plan, List.of(), days, List.of(), templates, List.of(), List.of());
  }

  /** That of the example, with more scales, loggers and places. */
  private static String plan() {
    return Golden.text("lot/book/plan.json")
        .replace(
            "\"instruments\": [",
            """
            "instruments": [
                {"id": "S-LB", "kind": "scale", "readability": "0.01 lb", "checkEvery": "30 d", "tolerance": "0.02 lb"},
                {"id": "S-OZ", "kind": "scale", "readability": "0.005 oz", "checkEvery": "30 d", "tolerance": "0.01 oz"},
                {"id": "LG-B", "kind": "logger", "accuracy": "0.5 °F", "checkEvery": "90 d", "tolerance": "1 °F"},
                {"id": "LG-C", "kind": "logger", "accuracy": "0.5 °F", "checkEvery": "90 d", "tolerance": "1 °F"},
                {"id": "LG-F", "kind": "logger", "accuracy": "0.5 °F", "checkEvery": "90 d", "tolerance": "1 °F"},
                {"id": "LG-W", "kind": "logger", "accuracy": "1 °F", "checkEvery": "90 d", "tolerance": "2 °F"},\
            """)
        .replace(
            "\"places\": [",
            """
            "places": [
                {"id": "SM2", "name": "second smoker", "kind": "smoker"},
                {"id": "F3", "name": "third fridge", "kind": "cooler"},\
            """);
  }

  private static DayJudged found(Judged judged) {
    return judged.day().orElseThrow(() -> new AssertionError(judged.faults()));
  }

  /** What was said of the whole, and what was said of the day alone. */
  private static Set<String> both(Set<String> whole, Set<String> day) {
    Set<String> all = new TreeSet<>(whole);
    day.stream().filter(each -> !whole.contains(each)).forEach(each -> all.add(each + BEFORE));
    return all;
  }

  private static Set<String> asked(DayJudged day) {
    return day.allFaults().stream()
        .filter(Fault::isOpen)
        .map(Fault::rule)
        .collect(Collectors.toSet());
  }

  private static Set<String> missed(DayJudged day) {
    return day.judgements().stream()
        .flatMap(lot -> Stream.concat(lot.deviations().stream(), lot.operatingMisses().stream()))
        .map(finding -> finding.limit().id() + " " + finding.verdict().words())
        .collect(Collectors.toSet());
  }

  boolean has(Habit habit) {
    return habits.contains(habit);
  }

  boolean isQuiet() {
    return asked.isEmpty() && missed.isEmpty();
  }

  @Override
  public String toString() {
    return number + " " + habits + " " + asked + " " + missed;
  }
}
