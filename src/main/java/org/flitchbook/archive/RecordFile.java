package org.flitchbook.archive;

import static org.flitchbook.message.Message.say;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Optional;
import org.flitchbook.book.BookFolder;
import org.flitchbook.disk.Disk;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.job.UsageException;
import org.flitchbook.message.Message;
import org.flitchbook.seal.PdfFile;
import org.flitchbook.seal.PdfFile.Extraction;

/**
 * A record, as PDF.
 *
 * @param path absolute
 * @param filed its place among the records of a book; empty where it lies elsewhere
 */
public record RecordFile(Path path, Optional<Filed> filed) {

  /** Folders between a record and its book: {@code records/2026-02-24/r1}. */
  private static final int DEPTH = 4;

  /**
   * A place among the records of a book.
   *
   * @param path in the book
   */
  public record Filed(Path book, LocalDate day, int revision, String path) {}

  /**
   * The record at a path.
   *
   * @throws UsageException where there is no such file
   */
  public static RecordFile of(Path file) {
    if (!Files.isRegularFile(file)) {
      throw new UsageException("archive.no-file", "there is no file {0}", file);
    }
    Path whole = file.toAbsolutePath().normalize();
    return new RecordFile(whole, filed(whole));
  }

  private static Optional<Filed> filed(Path file) {
    Path book = file;
    for (int i = 0; i < DEPTH && book != null; i++) {
      book = book.getParent();
    }
    if (book == null || !Files.isRegularFile(book.resolve(BookFolder.PLAN))) {
      return Optional.empty();
    }
    Path folder = book;
    Path within = book.relativize(file);
    String path = within.toString().replace('\\', '/');
    return Disk.day(within.getName(1))
        .filter(day -> path.startsWith(RecordFolder.NAME + "/"))
        .flatMap(
            day ->
                RecordFolder.revision(within.getName(2))
                    .map(number -> new Filed(folder, day, number, path)));
  }

  /**
   * Its bytes.
   *
   * @throws UsageException where it can't be read
   */
  public byte[] bytes() {
    return Disk.read(path);
  }

  /** The file's name, without its folder. */
  public String name() {
    return Disk.name(path);
  }

  /** What is wrong where the file can't be read as PDF. */
  public Fault noPdf() {
    Message found =
        PdfFile.attachments(bytes()) instanceof Extraction.Refused refused
            ? refused.found()
            : say("archive.no-pdf", "what can't be read as PDF");
    return Fault.broken("record", Place.of(name()), found, say("archive.record", "a record"));
  }

  /** The folder, on the same disk, in which another file is written before it takes its place. */
  public Path folderForNew() {
    return filed
        .map(place -> RecordFolder.of(place.book()).folder(place.day()))
        .orElseGet(() -> path.resolveSibling(""));
  }
}
