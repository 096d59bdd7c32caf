package org.flitchbook.book;

import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import org.flitchbook.disk.Disk;
import org.flitchbook.input.Fault;
import org.flitchbook.input.SourceFile;
import org.flitchbook.job.UsageException;
import org.flitchbook.sheet.Sheet;

/**
 * A book as it lies on the disk, or as a record carries it.
 *
 * @param formerPlans the versions of the plan that it replaced
 * @param days the files of each day's folder
 * @param unread files that may hold entries and lie where nothing is read
 * @param templates the program's templates, the book's own in their place
 * @param ownTemplates the names of the book's own
 * @param faults files that can't be read
 */
public record Book(
    Path folder,
    SourceFile plan,
    List<SourceFile> formerPlans,
    NavigableMap<LocalDate, List<SourceFile>> days,
    List<SourceFile> unread,
    List<SourceFile> templates,
    List<String> ownTemplates,
    List<Fault> faults) {

  /** The day in whose folder a file stands; empty for a file of the book itself. */
  public static Optional<LocalDate> dayOf(String file) {
    try {
      return Optional.of(LocalDate.parse(file.substring(0, Math.max(0, file.indexOf('/')))));
    } catch (DateTimeException noDay) {
      return Optional.empty();
    }
  }

  /** The files that nothing reads, each asked about. */
  public List<Fault> asks() {
    return unread.stream().map(UnreadFiles::ask).toList();
  }

  /** The name of the folder, which is the name of the book. */
  public String name() {
    return Disk.name(folder.toAbsolutePath().normalize());
  }

  /**
   * The last day that has a folder.
   *
   * @throws UsageException where none has
   */
  public LocalDate lastDay() {
    if (days.isEmpty()) {
      throw new UsageException("book.no-days", "{0} has no day's folder yet", folder);
    }
    return days.lastKey();
  }

  /** The days in whose folders a file lies that may hold entries. */
  public List<LocalDate> daysWithEntries() {
    return days.entrySet().stream()
        .filter(day -> day.getValue().stream().anyMatch(Book::mayHoldRows))
        .map(Map.Entry::getKey)
        .toList();
  }

  private static boolean mayHoldRows(SourceFile file) {
    return Sheet.mayHoldRows(file.baseName());
  }

  /** All that a day's records are made from: plans, the days up to it, templates. */
  public List<SourceFile> inputs(LocalDate day) {
    List<SourceFile> inputs = new ArrayList<>(List.of(plan));
    inputs.addAll(formerPlans);
    days.headMap(day, true).values().forEach(inputs::addAll);
    inputs.addAll(unread);
    inputs.addAll(templates);
    return inputs;
  }
}
