package org.flitchbook.archive;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.time.LocalDateTime;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;
import org.flitchbook.input.SourceFile;

/**
 * A day's records and all that they were judged from, in one ZIP with a manifest that {@code
 * sha256sum -c} reads. The same files give the same bytes.
 *
 * @param records by their names in the revision's folder
 * @param evidence what they were made from, by the names in the book
 */
public record Bundle(
    SortedMap<String, SourceFile> records, SortedMap<String, SourceFile> evidence) {

  /** The name of the bundle in a revision's folder. */
  public static final String FILE = "bundle.zip";

  private static final String MANIFEST = "manifest.sha256";
  private static final String EVIDENCE = "evidence/";
  private static final String RECORDS = "records/";

  /** What a bundle may unpack to at any rate, and how many times its size: tables pack by 30. */
  private static final int SMALL = 64 << 20;

  private static final int MOST_TIMES = 50;

  /** No bundle of a book is that large; more would fill the memory. */
  private static final int LARGEST = 1 << 30;

  /**
   * A clock's time would change the bytes each time. The first moment that ZIP knows would too:
   * Java adds to it the same moment in the machine's own zone.
   */
  private static final LocalDateTime STAMP = LocalDateTime.of(1980, 2, 1, 0, 0);

  /** A bundle of files as they were made. */
  public static Bundle of(Map<String, byte[]> records, Iterable<SourceFile> evidence) {
    Bundle bundle = new Bundle(new TreeMap<>(), new TreeMap<>());
    records.forEach((name, bytes) -> bundle.records.put(name, SourceFile.of(name, bytes)));
    evidence.forEach(file -> bundle.evidence.put(file.name(), file));
    return bundle;
  }

  /**
   * Takes a bundle apart; empty where it is no ZIP, holds two files of one name, is not what its
   * own manifest says, or would fill the memory.
   */
  public static Optional<Bundle> read(byte[] bytes) {
    SortedMap<String, SourceFile> files = new TreeMap<>();
    long left = Math.min(LARGEST, Math.max(SMALL, (long) MOST_TIMES * bytes.length));
    try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(bytes), UTF_8)) {
      for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
        byte[] content = zip.readNBytes((int) left);
        if (zip.read() >= 0) {
          return Optional.empty();
        }
        left -= content.length;
        if (files.put(entry.getName(), SourceFile.of(entry.getName(), content)) != null) {
          return Optional.empty();
        }
      }
    } catch (IOException noBundle) {
      return Optional.empty();
    }
    SourceFile manifest = files.remove(MANIFEST);
    boolean isWhole =
        manifest != null && manifest.content().equals(ByteBuffer.wrap(manifest(files.values())));
    return isWhole
        ? Optional.of(new Bundle(below(RECORDS, files), below(EVIDENCE, files)))
        : Optional.empty();
  }

  private static SortedMap<String, SourceFile> below(
      String folder, SortedMap<String, SourceFile> files) {
    SortedMap<String, SourceFile> found = new TreeMap<>();
    files.values().stream()
        .filter(file -> file.name().startsWith(folder))
        .forEach(file -> put(found, file.name().substring(folder.length()), file.content()));
    return found;
  }

  /** In the form that {@code sha256sum} writes. */
  private static byte[] manifest(Iterable<SourceFile> files) {
    StringBuilder manifest = new StringBuilder();
    files.forEach(
        file -> manifest.append(file.sha256()).append("  ").append(file.name()).append('\n'));
    return manifest.toString().getBytes(UTF_8);
  }

  public byte[] zip() {
    SortedMap<String, SourceFile> all = new TreeMap<>();
    records.values().forEach(file -> put(all, RECORDS + file.name(), file.content()));
    evidence.values().forEach(file -> put(all, EVIDENCE + file.name(), file.content()));
    put(all, MANIFEST, ByteBuffer.wrap(manifest(all.values())));
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (ZipOutputStream zip = new ZipOutputStream(bytes, UTF_8)) {
      for (SourceFile file : all.values()) {
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

  private static void put(Map<String, SourceFile> all, String name, ByteBuffer content) {
    all.put(name, new SourceFile(name, content));
  }
}
