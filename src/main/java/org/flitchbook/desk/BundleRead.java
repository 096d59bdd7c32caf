package org.flitchbook.desk;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.flitchbook.input.SourceFile;

/**
 * A bundle as it lies on the disk, taken apart.
 *
 * @param files by their names in it, the manifest left out
 */
record BundleRead(SortedMap<String, SourceFile> files) {

  private static final String EVIDENCE = "evidence/";
  private static final String RECORDS = "records/";

  /** No bundle of a book is that large; more would fill the memory. */
  private static final int LARGEST = 1 << 30;

  /** The files of a bundle; empty where it is no ZIP, or not what its own manifest says. */
  static Optional<BundleRead> of(byte[] bytes) {
    SortedMap<String, SourceFile> files = new TreeMap<>();
    long left = LARGEST;
    try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(bytes), UTF_8)) {
      for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
        byte[] content = zip.readNBytes((int) left);
        left -= content.length;
        files.put(entry.getName(), SourceFile.of(entry.getName(), content));
      }
    } catch (IOException noBundle) {
      return Optional.empty();
    }
    SourceFile manifest = files.remove(Bundle.MANIFEST);
    boolean isWhole = manifest != null && manifest.content().equals(manifestOf(files));
    return isWhole ? Optional.of(new BundleRead(files)) : Optional.empty();
  }

  private static ByteBuffer manifestOf(SortedMap<String, SourceFile> files) {
    return ByteBuffer.wrap(Bundle.manifest(files.values()));
  }

  /** The files that the records were made from, by their names in the book. */
  List<SourceFile> evidence() {
    return below(EVIDENCE).values().stream().toList();
  }

  /** The records, by their names in the revision's folder. */
  SortedMap<String, SourceFile> records() {
    return below(RECORDS);
  }

  private SortedMap<String, SourceFile> below(String folder) {
    SortedMap<String, SourceFile> found = new TreeMap<>();
    files.forEach(
        (name, file) -> {
          if (name.startsWith(folder)) {
            String inside = name.substring(folder.length());
            found.put(inside, SourceFile.of(inside, file.bytes()));
          }
        });
    return found;
  }

  /** The SHA-256 of each of some files, by its name. */
  static SortedMap<String, String> hashes(Iterable<SourceFile> files) {
    SortedMap<String, String> hashes = new TreeMap<>();
    files.forEach(file -> hashes.put(file.name(), file.sha256()));
    return hashes;
  }
}
