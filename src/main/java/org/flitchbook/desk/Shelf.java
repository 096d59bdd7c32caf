package org.flitchbook.desk;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.input.SourceFile;

/** Takes books off the disk. Files are only read, never written to. */
final class Shelf {

  /** Twenty times the longest log to be expected; the readings of a larger one fill the memory. */
  private static final long LARGEST = 128L * 1024 * 1024;

  /** Above this a file stays on the disk and is looked at there. */
  private static final long HELD = 4L * 1024 * 1024;

  static final String PLAN = "plan.json";
  static final String FORMER_PLANS = "plans/";

  private static final Pattern INPUT = Pattern.compile("(?i)\\.(csv|json)$");

  private Shelf() {}

  /** The folder of the book that a day's folder, or the book's own folder, belongs to. */
  static Path bookOf(Path where) {
    Path folder = folder(where);
    if (Files.exists(folder.resolve(PLAN))) {
      return folder;
    }
    Path above = folder.getParent();
    if (above != null && Files.exists(above.resolve(PLAN))) {
      return above;
    }
    throw new Misuse("no " + PLAN + " in " + where + " nor in the folder above it");
  }

  private static Path folder(Path where) {
    if (where.toString().isEmpty()) {
      throw new Misuse("the folder's name is empty; name a day's folder or a book's");
    }
    if (Files.isRegularFile(where)) {
      throw new Misuse(where + " is a file; name a day's folder or a book's");
    }
    if (!Files.isDirectory(where)) {
      throw new Misuse("there is no folder " + where);
    }
    return where.toAbsolutePath().normalize();
  }

  /** The day that a folder is named after; empty where the folder is the book itself. */
  static Optional<LocalDate> dayOf(Path where) {
    Path folder = folder(where);
    if (folder.equals(bookOf(where))) {
      return Optional.empty();
    }
    Optional<LocalDate> day = date(folder);
    if (day.isEmpty()) {
      throw new Misuse(where + " is no day's folder; its name must be a date such as 2026-02-24");
    }
    return day;
  }

  static Book take(Path folder, List<Fault> faults) {
    Book book = withoutDays(folder, faults);
    for (Path each : list(folder)) {
      Optional<LocalDate> day = date(each);
      if (day.isPresent() && Files.isDirectory(each)) {
        book.days().put(day.get(), files(each, name(each), faults));
      } else if (day.isPresent()) {
        faults.add(noFile(each, name(each), "the folder of that day"));
      }
    }
    return book;
  }

  /** The plan of a book and what it draws on, for jobs that judge nothing. */
  static Book withoutDays(Path folder, List<Fault> faults) {
    SourceFile plan =
        read(folder.resolve(PLAN), PLAN, faults).orElse(SourceFile.of(PLAN, new byte[0]));
    Map<String, SourceFile> templates = new LinkedHashMap<>();
    Templates.ofTheTool().forEach(file -> templates.put(file.name(), file));
    List<SourceFile> own = templates(folder, faults);
    List<SourceFile> former = formerPlans(folder, faults);
    own.forEach(file -> templates.put(file.name(), file));
    return new Book(
        folder,
        plan,
        former,
        new TreeMap<>(),
        List.copyOf(templates.values()),
        own.stream().map(SourceFile::name).toList());
  }

  /** A file of a book as it is now, by its path in the book; empty where there is none. */
  static Optional<SourceFile> inBook(Path book, String path) {
    Path file = book.resolve(path);
    try {
      return Files.isRegularFile(file)
          ? Optional.of(SourceFile.of(path, Files.readAllBytes(file)))
          : Optional.empty();
    } catch (IOException unreadable) {
      throw new Misuse("can't read " + file + ": " + Reason.of(unreadable), unreadable);
    }
  }

  private static List<SourceFile> formerPlans(Path folder, List<Fault> faults) {
    Path plans = folder.resolve(FORMER_PLANS);
    return Files.isDirectory(plans) ? files(plans, name(plans), faults) : List.of();
  }

  private static List<SourceFile> templates(Path folder, List<Fault> faults) {
    Path templates = folder.resolve("templates");
    if (!Files.isDirectory(templates)) {
      return List.of();
    }
    List<SourceFile> own = new ArrayList<>(files(templates, "templates", faults));
    for (Path each : list(templates)) {
      if (Files.isDirectory(each)) {
        own.addAll(files(each, "templates/" + name(each), faults));
      }
    }
    return own;
  }

  private static List<SourceFile> files(Path folder, String prefix, List<Fault> faults) {
    List<SourceFile> files = new ArrayList<>();
    for (Path each : list(folder)) {
      String name = prefix + "/" + name(each);
      if (name(each).startsWith(".")) {
        continue;
      }
      if (Files.isRegularFile(each)) {
        read(each, name, faults).ifPresent(files::add);
      } else if (!Files.isDirectory(each) || INPUT.matcher(name).find()) {
        faults.add(noFile(each, name, "a file that can be read, or nothing"));
      }
    }
    return files;
  }

  /** A sheet or log that isn't there must not look like one that was never written. */
  private static Fault noFile(Path path, String name, String expected) {
    String found =
        Files.isDirectory(path)
            ? "a folder"
            : Files.isRegularFile(path) ? "a file" : "something that is neither file nor folder";
    boolean leadsNowhere = Files.isSymbolicLink(path) && !Files.exists(path);
    return Fault.broken(
        "file", Place.of(name), leadsNowhere ? "a link that leads nowhere" : found, expected);
  }

  /**
   * One file from anywhere.
   *
   * @throws Misuse where it is none
   */
  static Optional<SourceFile> file(Path file, List<Fault> faults) {
    if (Files.isDirectory(file)) {
      throw new Misuse(file + " is a folder; name a probe log");
    }
    if (!Files.isRegularFile(file)) {
      throw new Misuse("there is no file " + file);
    }
    return read(file, name(file), faults);
  }

  private static Optional<SourceFile> read(Path file, String name, List<Fault> faults) {
    try {
      long size = Files.size(file);
      if (size > LARGEST) {
        faults.add(
            Fault.broken(
                "file too large",
                Place.of(name),
                size / (1024 * 1024) + " MB",
                "at most " + LARGEST / (1024 * 1024) + " MB; cut the log by day"));
        return Optional.empty();
      }
      return Optional.of(new SourceFile(name, content(file, size)));
    } catch (IOException unreadable) {
      faults.add(
          Fault.broken("file", Place.of(name), Reason.of(unreadable), "a file that can be read"));
      return Optional.empty();
    }
  }

  private static ByteBuffer content(Path file, long size) throws IOException {
    if (size <= HELD) {
      return ByteBuffer.wrap(Files.readAllBytes(file));
    }
    try (FileChannel channel = FileChannel.open(file, StandardOpenOption.READ)) {
      return channel.map(FileChannel.MapMode.READ_ONLY, 0, size);
    }
  }

  private static List<Path> list(Path folder) {
    try (Stream<Path> entries = Files.list(folder)) {
      return entries.sorted(Comparator.comparing(Shelf::name)).toList();
    } catch (NoSuchFileException gone) {
      throw new Misuse("there is no folder " + folder, gone);
    } catch (IOException unreadable) {
      throw new Misuse("can't look into " + folder + ": " + Reason.of(unreadable), unreadable);
    }
  }

  private static Optional<LocalDate> date(Path folder) {
    try {
      return Optional.of(LocalDate.parse(name(folder)));
    } catch (DateTimeException noDate) {
      return Optional.empty();
    }
  }

  private static String name(Path path) {
    Path name = path.getFileName();
    return name == null ? "" : name.toString();
  }
}
