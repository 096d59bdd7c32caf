package org.flitchbook.reading;

import static org.flitchbook.message.Message.say;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.input.SourceFile;
import org.flitchbook.measure.Unit;
import org.flitchbook.sheet.Sheet;

/** Reads what one day's folder holds: sheets by their names, logs as {@code logs.json} states. */
public final class Readings {

  /** How a text of {@code logs.json} begins that is a question and no answer; it is refused. */
  public static final String QUESTION = "? ";

  private static final String LAYOUTS = "logs.json";

  private final Hand hand;
  private final Instant last;
  private final List<Entry> entries = new ArrayList<>();
  private final List<Series> series = new ArrayList<>();
  private final List<FileRead> files = new ArrayList<>();
  private final List<Fault> faults = new ArrayList<>();

  private Readings(LocalDate date, Hand hand) {
    this.hand = hand;
    this.last =
        date.plusDays(1L + hand.practice().daysAhead()).atStartOfDay(hand.zone()).toInstant();
  }

  /**
   * Reads the files of one day. Every fault of every file is found; a row that can't be used is a
   * stop of its lot, a file that can't be parsed is broken.
   */
  public static Day read(LocalDate date, List<SourceFile> files, Hand hand) {
    Readings readings = new Readings(date, hand);
    List<SourceFile> inOrder =
        files.stream().sorted(Comparator.comparing(SourceFile::name)).toList();
    readings.readAll(inOrder);
    return new Day(date, readings.entries, readings.series, readings.files, readings.faults);
  }

  /** A time as people write it, or empty where it is none or has two meanings in that zone. */
  public static Optional<Instant> time(String text, ZoneId zone) {
    return Times.read(text, zone) instanceof Times.Result.Read read
        ? Optional.of(read.moment().written())
        : Optional.empty();
  }

  /**
   * The clock that an entry of {@code logs.json} states.
   *
   * @param key {@code pattern}, {@code elapsed}, {@code epoch} or {@code serial}
   * @param start what {@code elapsed} counts from
   * @return empty where the value is none that the key can have
   */
  public static Optional<LogClock> clock(
      String key, String value, ZoneId zone, Instant start, char decimalMark) {
    return LogTime.clock(key, value, zone, start, decimalMark);
  }

  /** The number that a cell of a log holds; empty where it holds none. */
  public static Optional<BigDecimal> number(String text, char decimalMark) {
    return Numbers.read(text, decimalMark);
  }

  /** The scale of a temperature that a heading names; empty where it names none. */
  public static Optional<Unit> scaleIn(String heading) {
    return UnitWord.in(heading);
  }

  /**
   * Joins the series of one probe for one lot or place, from whatever logs of whatever days: a log
   * pulled twice, or two that follow each other. What two of them say of one time is a note where
   * they say the same, else an ask; then both are counted.
   */
  public static List<Series> joined(List<Series> all, List<Fault> faults) {
    return new Joining(all, faults).joined();
  }

  private void readAll(List<SourceFile> all) {
    List<LogLayout> layouts = new ArrayList<>();
    for (SourceFile file : all) {
      if (file.baseName().equals(LAYOUTS)) {
        layouts.addAll(LogsFile.read(file, faults));
        files.add(unread(file, "layout of logs"));
      }
    }
    for (SourceFile file : all) {
      if (!file.baseName().equals(LAYOUTS)) {
        read(file, layouts);
      }
    }
    layouts.forEach(layout -> checkFound(layout, all));
  }

  private void read(SourceFile file, List<LogLayout> layouts) {
    Optional<Sheet> sheet = Sheet.ofFile(file.baseName());
    List<LogLayout> fitting = layouts.stream().filter(each -> each.fits(file.baseName())).toList();
    if (sheet.isPresent()) {
      files.add(SheetReader.read(file, sheet.get(), hand, entries, faults));
    } else if (fitting.isEmpty()) {
      files.add(unread(file, FileRead.NOT_READ));
      unclaimed(file);
    } else {
      fitting.stream().skip(1).forEach(other -> namedTwice(file, fitting.get(0), other));
      files.add(LogReader.read(file, fitting.get(0), hand.practice(), last, series, faults));
    }
  }

  private void namedTwice(SourceFile file, LogLayout first, LogLayout other) {
    faults.add(
        Fault.broken(
            "log named twice",
            other.place(),
            say(
                "reading.named-twice.found",
                "{0}, which {1} names too",
                file.baseName(),
                first.place().column()),
            say("reading.named-twice.expected", "one entry for each file")));
  }

  /** A table that nobody reads may hold the very readings that a limit needs. */
  private void unclaimed(SourceFile file) {
    if (file.baseName().toLowerCase(Locale.ROOT).endsWith(".csv")) {
      faults.add(
          Fault.ask(
              "file not read",
              "",
              Place.of(file.name()),
              say(
                  "reading.unread.found",
                  "a CSV file that is no sheet and that logs.json does not name"),
              say(
                  "reading.unread.expected",
                  "a sheet's name, or an entry in logs.json that says how to read it")));
    }
  }

  private void checkFound(LogLayout layout, List<SourceFile> all) {
    if (all.stream().noneMatch(file -> isLog(file) && layout.fits(file.baseName()))) {
      faults.add(
          Fault.ask(
              "log missing",
              "",
              layout.place(),
              say("reading.missing.found", "no file called {0}", layout.files()),
              say("reading.missing.expected", "the log that this entry describes")));
    }
  }

  private static boolean isLog(SourceFile file) {
    return Sheet.ofFile(file.baseName()).isEmpty() && !file.baseName().equals(LAYOUTS);
  }

  private static FileRead unread(SourceFile file, String use) {
    return new FileRead(file.name(), use, file.content().remaining(), file.sha256(), 0, 0);
  }
}
