package org.flitchbook.book;

import static org.flitchbook.message.Message.say;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.flitchbook.disk.Disk;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.input.SourceFile;
import org.flitchbook.job.Session;
import org.flitchbook.job.UsageException;
import org.flitchbook.message.Message;
import org.flitchbook.plan.Plan;

/** Takes books off the disk. Files are only read, never written to. */
public final class BookFolder {

  /** The name of the plan in the book's folder. */
  public static final String PLAN = "plan.json";

  /** The folder of the plans that it replaced. */
  public static final String FORMER_PLANS = "plans/";

  /** The folder of the book's own templates. */
  public static final String TEMPLATES = "templates/";

  /** Twenty times the longest log to be expected; the readings of a larger one fill the memory. */
  private static final long LARGEST_MB = 128;

  private static final long MB = 1024 * 1024;

  /** Above this a file stays on the disk and is looked at there. */
  private static final long HELD = 4 * MB;

  private static final Message READING = say("book.reading", "reading");

  private static final Pattern INPUT = Pattern.compile("(?i)\\.(csv|json)$");

  private final Path folder;
  private final List<Fault> faults = new ArrayList<>();

  private BookFolder(Path folder) {
    this.folder = folder;
  }

  /**
   * The folder of the book that a day's folder, or the book's own folder, belongs to.
   *
   * @throws UsageException where there is none
   */
  public static Path of(Path where) {
    return Stream.iterate(folder(where), Objects::nonNull, Path::getParent)
        .limit(2)
        .filter(folder -> Files.exists(folder.resolve(PLAN)))
        .findFirst()
        .orElseThrow(
            () ->
                new UsageException(
                    "book.no-plan", "no {0} in {1} nor in the folder above it", PLAN, where));
  }

  private static Path folder(Path where) {
    if (where.toString().isEmpty()) {
      throw new UsageException(
          "book.no-name", "the folder's name is empty; name a day's folder or a book's");
    }
    if (Files.isRegularFile(where)) {
      throw new UsageException(
          "book.not-a-file", "{0} is a file; name a day's folder or a book's", where);
    }
    if (!Files.isDirectory(where)) {
      throw new UsageException("book.no-folder", "there is no folder {0}", where);
    }
    return where.toAbsolutePath().normalize();
  }

  /**
   * The day that a folder is named after; empty where the folder is the book itself.
   *
   * @throws UsageException where it is neither
   */
  public static Optional<LocalDate> dayOf(Path where) {
    Path folder = folder(where);
    Optional<LocalDate> day = Disk.day(folder);
    boolean isBook = folder.equals(of(where));
    if (!isBook && day.isEmpty()) {
      throw new UsageException(
          "book.no-day",
          "{0} is no day's folder; its name must be a date such as 2026-02-24",
          where);
    }
    return isBook ? Optional.empty() : day;
  }

  /**
   * Reads a book, whichever of its folders is named; from now on the session speaks the language of
   * its plan.
   *
   * @throws UsageException where there is none
   */
  public static PlannedBook read(Session session, Path where) {
    return read(session, where, true);
  }

  /** The same without the days, for jobs that judge nothing. */
  public static PlannedBook readPlan(Session session, Path where) {
    return read(session, where, false);
  }

  private static PlannedBook read(Session session, Path where, boolean withDays) {
    session.progress(READING);
    PlannedBook book = PlannedBook.of(new BookFolder(of(where)).book(withDays));
    book.plan().map(Plan::words).ifPresent(session::speak);
    return book;
  }

  /** A file of a book as it is now, by its path in the book; empty where there is none. */
  public static Optional<SourceFile> file(Path book, String path) {
    Path file = book.resolve(path);
    return Files.isRegularFile(file) && Disk.reading(file, () -> Disk.isWithin(book, file))
        ? Optional.of(SourceFile.of(path, Disk.read(file)))
        : Optional.empty();
  }

  /** A file, or why it can't be read. */
  public record FileRead(Optional<SourceFile> file, List<Fault> faults) {}

  /**
   * One file from anywhere; where it lies in a book, the session speaks the language of its plan.
   *
   * @throws UsageException where it is none
   */
  public static FileRead file(Session session, Path file) {
    Stream.iterate(file.toAbsolutePath().normalize(), Objects::nonNull, Path::getParent)
        .filter(folder -> Files.exists(folder.resolve(PLAN)))
        .findFirst()
        .ifPresent(book -> readPlan(session, book));
    session.progress(READING);
    if (Files.isDirectory(file)) {
      throw new UsageException("book.no-log", "{0} is a folder; name a probe log", file);
    }
    if (!Files.isRegularFile(file)) {
      throw new UsageException("book.no-file", "there is no file {0}", file);
    }
    BookFolder reader = new BookFolder(file);
    return new FileRead(reader.read(file, Disk.name(file)), reader.faults);
  }

  /** The templates that the program brings along. */
  public static List<SourceFile> toolTemplates() {
    return ToolTemplates.all();
  }

  private Book book(boolean withDays) {
    SourceFile plan = read(folder.resolve(PLAN), PLAN).orElse(SourceFile.of(PLAN, new byte[0]));
    Map<String, SourceFile> templates = new LinkedHashMap<>();
    toolTemplates().forEach(file -> templates.put(file.name(), file));
    List<SourceFile> own = templates();
    List<SourceFile> former = formerPlans();
    own.forEach(file -> templates.put(file.name(), file));
    NavigableMap<LocalDate, List<SourceFile>> days = withDays ? days() : new TreeMap<>();
    List<SourceFile> unread = withDays ? UnreadFiles.in(folder, this::read) : List.of();
    return new Book(
        folder,
        plan,
        former,
        days,
        unread,
        List.copyOf(templates.values()),
        own.stream().map(SourceFile::name).toList(),
        faults);
  }

  private NavigableMap<LocalDate, List<SourceFile>> days() {
    NavigableMap<LocalDate, List<SourceFile>> days = new TreeMap<>();
    for (Path each : Disk.list(folder)) {
      Optional<LocalDate> day = Disk.day(each);
      if (day.isPresent() && Files.isDirectory(each)) {
        days.put(day.get(), files(each, Disk.name(each)));
      } else if (day.isPresent()) {
        faults.add(
            noFile(each, Disk.name(each), say("book.day.expected", "the folder of that day")));
      }
    }
    return days;
  }

  private List<SourceFile> formerPlans() {
    Path plans = folder.resolve(FORMER_PLANS);
    return Files.isDirectory(plans) ? files(plans, Disk.name(plans)) : List.of();
  }

  private List<SourceFile> templates() {
    Path templates = folder.resolve(TEMPLATES);
    if (!Files.isDirectory(templates)) {
      return List.of();
    }
    List<SourceFile> own = new ArrayList<>(files(templates, "templates"));
    Disk.list(templates).stream()
        .filter(Files::isDirectory)
        .forEach(each -> own.addAll(files(each, TEMPLATES + Disk.name(each))));
    return own;
  }

  private List<SourceFile> files(Path folder, String prefix) {
    List<SourceFile> files = new ArrayList<>();
    if (!isReadable(folder, prefix)) {
      return files;
    }
    for (Path each : Disk.list(folder)) {
      String name = prefix + "/" + Disk.name(each);
      if (Disk.name(each).startsWith(".")) {
        continue;
      }
      if (Files.isRegularFile(each)) {
        read(each, name).ifPresent(files::add);
      } else if (!Files.isDirectory(each) || INPUT.matcher(name).find()) {
        faults.add(
            noFile(
                each,
                name,
                say("book.readable-or-nothing", "a file that can be read, or nothing")));
      }
    }
    return files;
  }

  /** A sheet or log that isn't there must not look like one that was never written. */
  private static Fault noFile(Path path, String name, Message expected) {
    return Fault.broken("file", Place.of(name), kind(path), expected);
  }

  private static Message kind(Path path) {
    if (Files.isSymbolicLink(path) && !Files.exists(path)) {
      return say("book.dead-link", "a link that leads nowhere");
    }
    if (Files.isDirectory(path)) {
      return say("book.a-folder", "a folder");
    }
    return Files.isRegularFile(path)
        ? say("book.a-file", "a file")
        : say("book.neither", "something that is neither file nor folder");
  }

  private boolean isReadable(Path path, String name) {
    try {
      Disk.requireWithin(folder, path);
      return true;
    } catch (IOException leadsOut) {
      addUnreadable(name, leadsOut);
      return false;
    }
  }

  private void addUnreadable(String name, IOException why) {
    Message expected = say("book.readable", "a file that can be read");
    faults.add(Fault.broken("file", Place.of(name), Disk.reason(why), expected));
  }

  private Optional<SourceFile> read(Path file, String name) {
    try {
      Disk.requireFile(folder, file);
      long size = Files.size(file);
      if (size <= LARGEST_MB * MB) {
        return Optional.of(new SourceFile(name, content(file, size)));
      }
      faults.add(
          Fault.broken(
              "file too large",
              Place.of(name),
              say("book.size", "{0} MB", size / MB),
              say("book.largest", "at most {0} MB; cut the log by day", LARGEST_MB)));
    } catch (IOException unreadable) {
      addUnreadable(name, unreadable);
    }
    return Optional.empty();
  }

  private static ByteBuffer content(Path file, long size) throws IOException {
    if (size <= HELD) {
      return ByteBuffer.wrap(Disk.bytes(file));
    }
    try (FileChannel channel = FileChannel.open(file, StandardOpenOption.READ)) {
      return channel.map(FileChannel.MapMode.READ_ONLY, 0, size);
    }
  }
}
