package org.flitchbook.look;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Severity;
import org.flitchbook.input.SourceFile;
import org.flitchbook.json.Binder;
import org.flitchbook.json.Json;
import org.flitchbook.message.Language;
import org.flitchbook.practice.Practice;
import org.flitchbook.reading.Day;
import org.flitchbook.reading.Hand;
import org.flitchbook.reading.Readings;
import org.flitchbook.table.FileText;
import org.flitchbook.table.Tables;

/**
 * Looks at a log as it was exported. What the file shows is said; what it can't show is left as a
 * question, which the reader of logs refuses until somebody has answered it.
 */
public final class Look {

  /** What a log is called while its entry is tried, whatever sheet its own name may be. */
  private static final String TRIED = "tried";

  private Look() {}

  /**
   * What was seen in a file.
   *
   * @param text for people; empty where no table was found
   * @param tree the same for programs, as maps, lists, texts and numbers
   * @param faults why no table was found; else none
   */
  public record Result(String text, Map<String, Object> tree, List<Fault> faults) {

    public Result {
      faults = List.copyOf(faults);
    }
  }

  /**
   * Looks at one file, whatever is in it.
   *
   * @param templates those of the program, for the numbers by which logs are read
   */
  public static Result at(SourceFile file, Language language, List<SourceFile> templates) {
    FileText text = Tables.encoding(file);
    Binder.Bound<Practice> practice = Practice.read(templates);
    Optional<Fault> unreadable = Tables.noText(file, text);
    if (unreadable.isPresent() || practice.value().isEmpty()) {
      return nothing(unreadable.map(List::of).orElse(practice.faults()));
    }
    Optional<LogTable> table = LogTable.of(file, text.charset());
    return NoTable.ofText(file, table)
        .map(fault -> nothing(List.of(fault)))
        .orElseGet(() -> seen(file, text, table.orElseThrow(), language, practice.value().get()));
  }

  private static Result seen(
      SourceFile file, FileText text, LogTable table, Language language, Practice practice) {
    LogScan scan = new LogScan(table);
    List<Fault> faults = Tables.read(file, table.layout(), scan);
    if (faults.stream().anyMatch(fault -> fault.is(Severity.BROKEN))) {
      return nothing(faults);
    }
    if (scan.time.filter(time -> time.first.isEmpty()).isPresent()) {
      return nothing(List.of(NoTable.withoutTimes(file, scan.time.get())));
    }
    if (scan.columns.stream().noneMatch(scan::mayHoldReadings)) {
      return nothing(List.of(NoTable.withoutReadings(file)));
    }
    String name = file.baseName();
    EntryProposal proposal =
        new EntryProposal(name, text, table, scan, EntryProposal.Asking.in(language));
    EntryProposal trial =
        new EntryProposal(TRIED, text, table, scan, EntryProposal.Asking.nobody());
    Report report =
        new Report(
            file,
            text,
            table,
            scan,
            language,
            proposal,
            rowsRead(file, trial, practice),
            Oddities.of(scan, faults));
    return new Result(report.text(), report.tree(), List.of());
  }

  /** How many rows the reader of logs takes by the entry, once its questions are answered. */
  private static int rowsRead(SourceFile file, EntryProposal trial, Practice practice) {
    Hand hand = new Hand(ZoneOffset.UTC, '.', practice);
    byte[] entry = Json.write(Map.of("logs", List.of(trial.entry())));
    Day day =
        Readings.read(
            LocalDate.of(2050, 1, 1),
            List.of(SourceFile.of("logs.json", entry), new SourceFile(TRIED, file.content())),
            hand);
    return day.files().stream().mapToInt(read -> read.used()).sum();
  }

  private static Result nothing(List<Fault> faults) {
    return new Result("", Map.of(), faults);
  }
}
