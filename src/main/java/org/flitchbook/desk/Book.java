package org.flitchbook.desk;

import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.List;
import java.util.NavigableMap;
import java.util.Optional;
import org.flitchbook.input.SourceFile;

/**
 * A book as it lies on the disk.
 *
 * @param formerPlans the versions of the plan that it replaced
 * @param days the files of each day's folder
 * @param templates the tool's templates, the book's own in their place
 * @param ownTemplates the names of the book's own
 */
record Book(
    Path folder,
    SourceFile plan,
    List<SourceFile> formerPlans,
    NavigableMap<LocalDate, List<SourceFile>> days,
    List<SourceFile> templates,
    List<String> ownTemplates) {

  /** The day in whose folder a file stands; empty for a file of the book itself. */
  static Optional<LocalDate> dayOf(String file) {
    try {
      return Optional.of(LocalDate.parse(file.substring(0, Math.max(0, file.indexOf('/')))));
    } catch (DateTimeException noDay) {
      return Optional.empty();
    }
  }

  /** The name of the folder, which is the name of the book. */
  String name() {
    Path name = folder.toAbsolutePath().normalize().getFileName();
    return name == null ? "" : name.toString();
  }
}
