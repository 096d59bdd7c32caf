package org.flitchbook.desk;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.flitchbook.input.SourceFile;

/**
 * A day's records and all that they were judged from, in one ZIP with a manifest that {@code
 * sha256sum -c} reads. The same files give the same bytes.
 */
final class Bundle {

  private static final String MANIFEST = "manifest.sha256";

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
    Map<String, byte[]> all = new TreeMap<>();
    records.forEach((name, bytes) -> all.put("records/" + name, bytes));
    put(all, List.of(book.plan()));
    put(all, book.formerPlans());
    book.days().headMap(day, true).values().forEach(files -> put(all, files));
    book.templates().forEach(file -> all.put("evidence/" + file.name(), file.bytes()));
    StringBuilder manifest = new StringBuilder();
    all.forEach(
        (name, bytes) ->
            manifest
                .append(SourceFile.of(name, bytes).sha256())
                .append("  ")
                .append(name)
                .append('\n'));
    all.put(MANIFEST, manifest.toString().getBytes(UTF_8));
    return zip(all);
  }

  private static void put(Map<String, byte[]> all, List<SourceFile> files) {
    files.forEach(file -> all.put("evidence/" + file.name(), file.bytes()));
  }

  private static byte[] zip(Map<String, byte[]> files) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (ZipOutputStream zip = new ZipOutputStream(bytes, UTF_8)) {
      for (Map.Entry<String, byte[]> file : files.entrySet()) {
        ZipEntry entry = new ZipEntry(file.getKey());
        entry.setTimeLocal(STAMP);
        zip.putNextEntry(entry);
        zip.write(file.getValue());
        zip.closeEntry();
      }
    } catch (IOException impossible) {
      throw new UncheckedIOException("zipping in memory", impossible);
    }
    return bytes.toByteArray();
  }
}
