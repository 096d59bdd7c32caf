package org.flitchbook.desk;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Puts records away, one folder a revision: {@code 2026-02-24/r1}. A revision is written in full to
 * a hidden folder beside it and then moved in one step; what lies there is never written over.
 */
final class Cabinet {

  private static final Pattern REVISION = Pattern.compile("r([1-9]\\d{0,5})");

  /** What the names of folders begin with that are not yet, or never became, a revision. */
  static final String HIDDEN = ".new-";

  private final Path records;

  Cabinet(Path records) {
    this.records = records;
  }

  /**
   * What was filed.
   *
   * @param told for people: which folder, or that nothing is new
   */
  record Filed(String told, List<Path> written) {}

  /**
   * Files records as the next revision, unless the last one on the disk holds the very same bytes.
   */
  Filed file(LocalDate day, Map<String, byte[]> files) {
    Path folder = folder(day);
    try {
      int last = Files.isDirectory(folder) ? lastRevision(folder) : 0;
      Path before = folder.resolve("r" + last);
      return last > 0 && isSame(before, files)
          ? new Filed("Nothing new: " + before + " holds these very records.\n", List.of())
          : file(day, last + 1, files);
    } catch (IOException unreadable) {
      throw new Misuse("can't read " + folder + ": " + Reason.of(unreadable), unreadable);
    }
  }

  /** Files records as that revision. They have reached the disk when this returns. */
  Filed file(LocalDate day, int number, Map<String, byte[]> files) {
    Path folder = folder(day);
    refuseFiles(folder);
    try {
      Disk.makeFolders(folder);
      Path revision = folder.resolve("r" + number);
      moveIn(folder, revision, files);
      List<Path> written = files.keySet().stream().map(revision::resolve).toList();
      return new Filed(told(written), written);
    } catch (IOException unwritable) {
      throw new Misuse("can't write to " + folder + ": " + Reason.of(unwritable), unwritable);
    }
  }

  Path folder(LocalDate day) {
    return records.resolve(day.toString());
  }

  private static void refuseFiles(Path folder) {
    for (Path each = folder; each != null; each = each.getParent()) {
      if (Files.exists(each) && !Files.isDirectory(each)) {
        throw new Misuse("can't write to " + folder + ": " + each + " is a file");
      }
    }
  }

  private static String told(List<Path> written) {
    StringBuilder told = new StringBuilder("Written:\n");
    written.stream()
        .filter(file -> file.toString().endsWith(".pdf"))
        .forEach(file -> told.append("    ").append(file).append('\n'));
    return told.append("and beside them the same as JSON, and bundle.zip with all evidence\n")
        .toString();
  }

  private static void moveIn(Path folder, Path revision, Map<String, byte[]> files)
      throws IOException {
    Path hidden = Files.createTempDirectory(folder, HIDDEN + revision.getFileName() + "-");
    try {
      // A folder of its own, since the hidden one is closed to everybody else.
      Path inside = Files.createDirectory(hidden.resolve("revision"));
      for (Map.Entry<String, byte[]> file : files.entrySet()) {
        Disk.write(inside.resolve(file.getKey()), file.getValue());
      }
      Disk.force(inside);
      Files.move(inside, revision, StandardCopyOption.ATOMIC_MOVE);
      Files.delete(hidden);
      Disk.force(folder);
    } catch (IOException failed) {
      clear(hidden, failed);
      throw failed;
    }
  }

  private static void clear(Path folder, IOException cause) {
    try {
      if (Files.exists(folder)) {
        Disk.delete(folder);
      }
    } catch (IOException left) {
      cause.addSuppressed(left);
    }
  }

  private static int lastRevision(Path folder) throws IOException {
    try (Stream<Path> entries = Files.list(folder)) {
      return entries
          .map(Cabinet::revision)
          .flatMap(Optional::stream)
          .max(Integer::compare)
          .orElse(0);
    }
  }

  /** The number of a revision's folder; empty for another folder. */
  static Optional<Integer> revision(Path folder) {
    Matcher name = REVISION.matcher(String.valueOf(folder.getFileName()));
    return name.matches() ? Optional.of(Integer.valueOf(name.group(1))) : Optional.empty();
  }

  private static boolean isSame(Path revision, Map<String, byte[]> files) throws IOException {
    Map<String, Path> there = new TreeMap<>();
    try (Stream<Path> entries = Files.list(revision)) {
      entries.forEach(file -> there.put(String.valueOf(file.getFileName()), file));
    }
    if (!there.keySet().equals(files.keySet())) {
      return false;
    }
    for (Map.Entry<String, byte[]> file : files.entrySet()) {
      Path before = there.get(file.getKey());
      if (before == null || !Arrays.equals(Files.readAllBytes(before), file.getValue())) {
        return false;
      }
    }
    return true;
  }
}
