package org.flitchbook.desk;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.flitchbook.input.SourceFile;

/**
 * A day's records and all that they were judged from, in one ZIP with a manifest that {@code
 * sha256sum -c} reads. The same files give the same bytes.
 */
final class Bundle {

  static final String MANIFEST = "manifest.sha256";

  /**
   * A clock's time would change the bytes each time. The first moment that ZIP knows would too:
   * Java adds to it the same moment in the machine's own zone.
   */
  private static final LocalDateTime STAMP = LocalDateTime.of(1980, 2, 1, 0, 0);

  private final Book book;
  private final LocalDate day;

  Bundle(Book book, LocalDate day) {
    this.book = book;
    this.day = day;
  }

  byte[] of(Map<String, byte[]> records) {
    SortedMap<String, SourceFile> all = new TreeMap<>();
    records.forEach((name, bytes) -> put(all, SourceFile.of("records/" + name, bytes)));
    inputs(book, day)
        .forEach(file -> put(all, SourceFile.of("evidence/" + file.name(), file.bytes())));
    put(all, SourceFile.of(MANIFEST, manifest(all.values())));
    return zip(all.values());
  }

  private static void put(Map<String, SourceFile> all, SourceFile file) {
    all.put(file.name(), file);
  }

  /** All that a day's records are made from: plans, the days up to it, templates. */
  static List<SourceFile> inputs(Book book, LocalDate day) {
    List<SourceFile> inputs = new ArrayList<>(List.of(book.plan()));
    inputs.addAll(book.formerPlans());
    book.days().headMap(day, true).values().forEach(inputs::addAll);
    inputs.addAll(book.templates());
    return inputs;
  }

  /** In the form that {@code sha256sum} writes. */
  static byte[] manifest(Iterable<SourceFile> files) {
    StringBuilder manifest = new StringBuilder();
    files.forEach(
        file -> manifest.append(file.sha256()).append("  ").append(file.name()).append('\n'));
    return manifest.toString().getBytes(UTF_8);
  }

  private static byte[] zip(Iterable<SourceFile> files) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (ZipOutputStream zip = new ZipOutputStream(bytes, UTF_8)) {
      for (SourceFile file : files) {
        ZipEntry entry = new ZipEntry(file.name());
        entry.setTimeLocal(STAMP);
        zip.putNextEntry(entry);
        zip.write(file.bytes());
        zip.closeEntry();
      }
    } catch (IOException impossible) {
      throw new UncheckedIOException("zipping in memory", impossible);
    }
    return bytes.toByteArray();
  }
}
