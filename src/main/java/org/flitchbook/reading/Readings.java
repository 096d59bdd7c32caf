package org.flitchbook.reading;

import static org.flitchbook.message.Message.say;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.input.SourceFile;
import org.flitchbook.json.Binder;
import org.flitchbook.measure.Unit;
import org.flitchbook.sheet.Sheet;

/** Reads what one day's folder holds: sheets by their names, logs as {@code logs.json} states. */
public final class Readings {

  /** How a text of {@code logs.json} begins that is a question and no answer; it is refused. */
  public static final String QUESTION = "? ";

  private final Hand hand;
  private final Instant last;
  private final List<SourceFile> files;
  private final List<Fault> ofLayouts;
  private final List<LogsFile.LogLayout> layouts;

  private Readings(LocalDate date, List<SourceFile> files, Hand hand) {
    this.hand = hand;
    this.last =
        date.plusDays(1L + hand.practice().daysAhead()).atStartOfDay(hand.zone()).toInstant();
    this.files = files.stream().sorted(Comparator.comparing(SourceFile::name)).toList();
    List<Binder.Bound<List<LogsFile.LogLayout>>> read =
        this.files.stream().filter(Readings::isLayouts).map(LogsFile::read).toList();
    this.ofLayouts = read.stream().flatMap(each -> each.faults().stream()).toList();
    this.layouts =
        read.stream().flatMap(each -> each.value().stream()).flatMap(List::stream).toList();
  }

  /**
   * Reads the files of one day. Every fault of every file is found; a row that can't be used is a
   * stop of its lot, a file that can't be parsed is broken.
   */
  public static Day read(LocalDate date, List<SourceFile> files, Hand hand) {
    return new Readings(date, files, hand).day(date);
  }

  /** A time as people write it, or empty where it is none or has two meanings in that zone. */
  public static Optional<Instant> time(String text, ZoneId zone) {
    return Times.read(text, zone, (rule, found, expected) -> {}).map(Moment::written);
  }

  /**
   * The clock that an entry of {@code logs.json} states, with a decimal point and in UTC.
   *
   * @param key {@code pattern}, {@code elapsed}, {@code epoch} or {@code serial}
   * @param value what the key may have; of a pattern anything
   * @param start what {@code elapsed} counts from
   * @return empty for a pattern by which no times can be read
   */
  public static Optional<LogClock> clock(String key, String value, String start) {
    return LogTime.clock(key, value, start);
  }

  /**
   * A number that a cell of a log holds.
   *
   * @param unit the one that stands beside it
   */
  public record Value(BigDecimal number, Optional<Unit> unit) {}

  /** What a cell of a log holds; empty where that is no number. */
  public static Optional<Value> value(String text, char decimalMark) {
    LogCell cell = LogCell.of(text, decimalMark);
    return cell.number().map(number -> new Value(number, cell.unit()));
  }

  /** The scale of a temperature that a heading names; empty where it names none. */
  public static Optional<Unit> scaleIn(String heading) {
    return UnitWord.in(heading);
  }

  /**
   * The series of one probe, each joined from its parts.
   *
   * @param faults where two parts say something of one time
   */
  public record Joined(List<Series> series, List<Fault> faults) {}

  /**
   * Joins the series of one probe for one lot or place, from whatever logs of whatever days: a log
   * pulled twice, or two that follow each other. What two of them say of one time is a note where
   * they say the same, else an ask; then both are counted.
   */
  public static Joined joined(List<Series> all) {
    return new Joining(all).joined();
  }

  private Day day(LocalDate date) {
    List<FileRead.Content> read =
        Stream.concat(
                files.stream()
                    .filter(Readings::isLayouts)
                    .map(file -> unread(file, "layout of logs", List.of())),
                files.stream().filter(file -> !isLayouts(file)).map(this::read))
            .toList();
    Stream<Fault> ofFiles = read.stream().flatMap(each -> each.faults().stream());
    Stream<Fault> missing = layouts.stream().filter(this::isMissing).map(Readings::missing);
    return new Day(
        date,
        read.stream().flatMap(each -> each.entries().stream()).toList(),
        read.stream().flatMap(each -> each.series().stream()).toList(),
        read.stream().map(FileRead.Content::file).toList(),
        Stream.of(ofLayouts.stream(), ofFiles, missing).flatMap(each -> each).toList());
  }

  private static boolean isLayouts(SourceFile file) {
    return file.baseName().equals("logs.json");
  }

  private FileRead.Content read(SourceFile file) {
    Optional<Sheet> sheet = Sheet.ofFile(file.baseName());
    List<LogsFile.LogLayout> fitting =
        layouts.stream().filter(each -> each.fits(file.baseName())).toList();
    if (sheet.isPresent()) {
      return SheetReader.read(file, sheet.get(), hand);
    }
    if (fitting.isEmpty()) {
      // A file that nobody reads may hold the very readings that a limit needs.
      boolean asks = Sheet.mayHoldRows(file.baseName());
      return unread(file, FileRead.NOT_READ, asks ? List.of(unclaimed(file)) : List.of());
    }
    return LogReader.read(file, fitting, hand.practice(), last);
  }

  private static Fault unclaimed(SourceFile file) {
    return Fault.ask(
        "file not read",
        "",
        Place.of(file.name()),
        say("reading.unread.found", "a file that is no sheet and that logs.json does not name"),
        Sheet.meant(file.baseName())
            .map(sheet -> say("reading.unread.sheet", "{0}, saved as CSV", sheet.file()))
            .orElseGet(
                () ->
                    say(
                        "reading.unread.expected",
                        "a sheet's name, or an entry in logs.json that says how to read it")));
  }

  private boolean isMissing(LogsFile.LogLayout layout) {
    return files.stream()
        .filter(file -> Sheet.ofFile(file.baseName()).isEmpty() && !isLayouts(file))
        .noneMatch(file -> layout.fits(file.baseName()));
  }

  private static Fault missing(LogsFile.LogLayout layout) {
    return Fault.ask(
        "log missing",
        "",
        layout.log().object().place(),
        say("reading.missing.found", "no file called {0}", layout.log().files()),
        say("reading.missing.expected", "the log that this entry describes"));
  }

  private static FileRead.Content unread(SourceFile file, String use, List<Fault> faults) {
    return new FileRead.Content(FileRead.of(file, use, 0, 0), List.of(), List.of(), faults);
  }
}
