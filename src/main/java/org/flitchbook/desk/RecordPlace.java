package org.flitchbook.desk;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.Optional;

/**
 * Where a record lies.
 *
 * @param file its absolute path
 * @param shelf its place among the records of a book; empty where it lies elsewhere
 */
record RecordPlace(Path file, Optional<Filed> shelf) {

  /** Folders between a record and its book: {@code records/2026-02-24/r1}. */
  private static final int DEPTH = 4;

  /** A place among the records of a book. */
  record Filed(Path book, LocalDate day, int revision, String path) {

    /** The folder of all revisions of that day. */
    Path folder() {
      return new Cabinet(book.resolve("records")).folder(day);
    }
  }

  /**
   * @throws Misuse where there is no such file
   */
  static RecordPlace of(Path file) {
    if (!Files.isRegularFile(file)) {
      throw new Misuse("there is no file " + file);
    }
    Path whole = file.toAbsolutePath().normalize();
    return new RecordPlace(whole, filed(whole));
  }

  private static Optional<Filed> filed(Path file) {
    Path book = file;
    for (int i = 0; i < DEPTH && book != null; i++) {
      book = book.getParent();
    }
    if (book == null || !Files.isRegularFile(book.resolve(Shelf.PLAN))) {
      return Optional.empty();
    }
    Path within = book.relativize(file);
    Optional<Integer> revision = Cabinet.revision(within.getName(2));
    boolean records = within.getName(0).toString().equals("records");
    Path found = book;
    return records
        ? revision.flatMap(
            number ->
                day(within.getName(1))
                    .map(
                        day -> new Filed(found, day, number, within.toString().replace('\\', '/'))))
        : Optional.empty();
  }

  private static Optional<LocalDate> day(Path name) {
    try {
      return Optional.of(LocalDate.parse(name.toString()));
    } catch (DateTimeException otherFolder) {
      return Optional.empty();
    }
  }

  byte[] bytes() {
    try {
      return Files.readAllBytes(file);
    } catch (IOException unreadable) {
      throw new Misuse("can't read " + file + ": " + Reason.of(unreadable), unreadable);
    }
  }

  /** The file's name, without its folder. */
  String name() {
    return String.valueOf(file.getFileName());
  }
}
