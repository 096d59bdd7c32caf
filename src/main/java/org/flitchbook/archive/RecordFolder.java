package org.flitchbook.archive;

import static org.flitchbook.message.Message.say;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.flitchbook.disk.Disk;
import org.flitchbook.job.UsageException;
import org.flitchbook.message.Message;

/**
 * A folder of records, with one folder a revision in it: {@code 2026-02-24/r1}. A revision is
 * written in full to a hidden folder beside it and then moved in one step; what lies there is never
 * written over.
 */
public record RecordFolder(Path records) {

  /** The name of this folder in a book. */
  public static final String NAME = "records";

  private static final Pattern REVISION = Pattern.compile("r([1-9]\\d{0,5})");

  public static RecordFolder of(Path book) {
    return new RecordFolder(book.resolve(NAME));
  }

  /** The path of a revision in its book. */
  static String path(LocalDate day, int revision) {
    return NAME + "/" + day + "/r" + revision;
  }

  public Path revision(LocalDate day, int number) {
    return folder(day).resolve("r" + number);
  }

  /** The folder of all revisions of a day. */
  public Path folder(LocalDate day) {
    return records.resolve(day.toString());
  }

  /**
   * Files records as the next revision, unless the last one on the disk holds the very same bytes.
   *
   * @return what was done, on a line each
   * @throws UsageException where the disk refuses
   */
  public List<Message> file(LocalDate day, Map<String, byte[]> files) {
    Path folder = folder(day);
    int last = Files.isDirectory(folder) ? lastRevision(folder) : 0;
    Path before = revision(day, last);
    return last > 0 && Disk.reading(folder, () -> isSame(before, files))
        ? List.of(nothingNew(before))
        : file(day, last + 1, files);
  }

  public static Message nothingNew(Path revision) {
    return say("archive.nothing-new", "Nothing new: {0} holds these very records.", revision);
  }

  /**
   * Files records as that revision. They have reached the disk when this returns.
   *
   * @return what was done, on a line each
   * @throws UsageException where the disk refuses
   */
  public List<Message> file(LocalDate day, int number, Map<String, byte[]> files) {
    Path folder = folder(day);
    refuseFiles(folder);
    Path revision = revision(day, number);
    Disk.writing(
        folder,
        () -> {
          Disk.makeFolders(folder);
          moveIn(folder, revision, files);
        });
    List<Message> lines = new ArrayList<>();
    lines.add(say("archive.written", "Written:"));
    files.keySet().stream()
        .filter(name -> name.endsWith(".pdf"))
        .forEach(name -> lines.add(Message.of("    " + revision.resolve(name))));
    lines.add(
        say(
            "archive.beside",
            "and beside them the same as JSON, and bundle.zip with all evidence"));
    return lines;
  }

  private static void refuseFiles(Path folder) {
    for (Path each = folder; each != null; each = each.getParent()) {
      if (Files.exists(each) && !Files.isDirectory(each)) {
        throw new UsageException(
            "archive.file-in-the-way", "can't write to {0}: {1} is a file", folder, each);
      }
    }
  }

  private static void moveIn(Path folder, Path revision, Map<String, byte[]> files)
      throws IOException {
    Path hidden = Files.createTempDirectory(folder, Disk.HIDDEN + revision.getFileName() + "-");
    try {
      // A folder of its own, since the hidden one is closed to everybody else.
      Path inside = Files.createDirectory(hidden.resolve("revision"));
      for (Map.Entry<String, byte[]> file : files.entrySet()) {
        Disk.write(inside.resolve(file.getKey()), file.getValue());
      }
      Disk.force(inside);
      Files.move(inside, revision, StandardCopyOption.ATOMIC_MOVE);
    } finally {
      Disk.delete(hidden);
    }
    Disk.force(folder);
  }

  private static int lastRevision(Path folder) {
    return Disk.list(folder).stream()
        .flatMap(each -> revision(each).stream())
        .max(Integer::compare)
        .orElse(0);
  }

  /** The number of a revision's folder; empty for another folder. */
  static Optional<Integer> revision(Path folder) {
    Matcher name = REVISION.matcher(Disk.name(folder));
    return name.matches() ? Optional.of(Integer.valueOf(name.group(1))) : Optional.empty();
  }

  private static boolean isSame(Path revision, Map<String, byte[]> files) throws IOException {
    List<Path> there = Disk.list(revision);
    for (Path file : there) {
      if (!Arrays.equals(Disk.bytes(file), files.get(Disk.name(file)))) {
        return false;
      }
    }
    return there.size() == files.size();
  }
}
