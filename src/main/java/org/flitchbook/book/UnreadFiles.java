package org.flitchbook.book;

import static org.flitchbook.message.Message.say;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.flitchbook.disk.Disk;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.input.SourceFile;
import org.flitchbook.message.Message;
import org.flitchbook.sheet.Sheet;

/**
 * The files of a book that lie where nothing is read and that may hold entries all the same: in its
 * own folder, in one that is named like no day, in a folder within a day's.
 */
final class UnreadFiles {

  /** Where blank sheets may lie, and former plans. */
  private static final Set<String> OWN = Set.of("templates", "plans");

  private static final String RECORDS = "records";

  private static final int DEEPEST = 4;

  /** Into the days of the records, and not into what was filed of them. */
  private static final int DAYS = 2;

  private static final Pattern DAY =
      Pattern.compile("(\\d{4})\\D?(\\d{1,2})\\D?(\\d{1,2})(?!\\d).*");

  private UnreadFiles() {}

  /**
   * Finds them on the disk.
   *
   * @param read reads a file under a name; empty where it can't
   */
  static List<SourceFile> in(Path book, BiFunction<Path, String, Optional<SourceFile>> read) {
    return Disk.list(book).stream()
        .flatMap(each -> files(book, each))
        .flatMap(file -> read.apply(file, name(book, file)).stream())
        .toList();
  }

  private static Stream<Path> files(Path book, Path path) {
    boolean other = Files.exists(path.resolve(BookFolder.PLAN)) || OWN.contains(Disk.name(path));
    if (isHidden(path) || other) {
      return Stream.of();
    }
    boolean ofDay = Disk.day(path).isPresent();
    return within(book, path)
        .filter(file -> !ofDay || !path.equals(file.getParent()))
        .filter(
            file -> ofDay ? Sheet.mayHoldRows(Disk.name(file)) : Sheet.isTable(Disk.name(file)));
  }

  private static Stream<Path> within(Path book, Path path) {
    return Disk.reading(
        path,
        () -> {
          try (Stream<Path> files =
              Files.walk(path, Disk.name(path).equals(RECORDS) ? DAYS : DEEPEST)) {
            return files.filter(file -> isPlain(book, file)).sorted().toList();
          }
        })
        .stream();
  }

  private static boolean isPlain(Path book, Path file) {
    for (Path part : book.relativize(file)) {
      if (isHidden(part)) {
        return false;
      }
    }
    return Files.isRegularFile(file);
  }

  private static boolean isHidden(Path path) {
    return Disk.name(path).startsWith(".");
  }

  private static String name(Path book, Path file) {
    return book.relativize(file).toString().replace('\\', '/');
  }

  /** What is asked about one of them, with the name that it should have. */
  static Fault ask(SourceFile file) {
    return Fault.ask(
        "file not read",
        "",
        Place.of(file.name()),
        say("book.unread.found", "a file that may hold entries, where nothing is read"),
        expected(file.name(), meant(file.baseName())));
  }

  private static Message expected(String name, String meant) {
    List<String> folders = List.of(name.split("/"));
    Optional<LocalDate> day = day(folders.get(0));
    return day.map(date -> say("book.unread.belongs", "it as {0}", date + "/" + meant))
        .orElseGet(
            () ->
                say(
                    "book.unread.in-day",
                    "it in the folder of its day, such as {0}",
                    "2026-02-24/" + meant));
  }

  private static String meant(String baseName) {
    return Sheet.meant(baseName).map(Sheet::file).orElse(baseName);
  }

  /** The day that a folder's name means, written as a date or nearly so. */
  private static Optional<LocalDate> day(String folder) {
    Matcher parts = DAY.matcher(folder);
    try {
      return parts.matches()
          ? Optional.of(
              LocalDate.of(
                  Integer.parseInt(parts.group(1)),
                  Integer.parseInt(parts.group(2)),
                  Integer.parseInt(parts.group(3))))
          : Optional.empty();
    } catch (DateTimeException noDay) {
      return Optional.empty();
    }
  }
}
