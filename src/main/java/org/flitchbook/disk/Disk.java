package org.flitchbook.disk;

import static org.flitchbook.message.Message.say;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.OpenOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.flitchbook.job.UsageException;
import org.flitchbook.message.Message;

/**
 * Reads and writes files. What is written has reached the disk when a method returns, so that it is
 * there after a power cut.
 */
public final class Disk {

  /** What the names of files and folders begin with that are not yet in their place. */
  public static final String HIDDEN = ".new-";

  private static final Set<PosixFilePermission> OTHERS =
      PosixFilePermissions.fromString("---rw-rw-");

  private Disk() {}

  /** Reads from the disk. */
  public interface Reading<T> {
    T read() throws IOException;
  }

  /** Writes to the disk. */
  public interface Writing {
    void write() throws IOException;
  }

  /**
   * What was read.
   *
   * @throws UsageException where the disk refuses
   */
  public static <T> T reading(Path where, Reading<T> reading) {
    try {
      return reading.read();
    } catch (IOException refused) {
      throw new UsageException(
          refused, "disk.cant-read", "can't read {0}: {1}", where, reason(refused));
    }
  }

  /**
   * Writes.
   *
   * @throws UsageException where the disk refuses
   */
  public static void writing(Path where, Writing writing) {
    try {
      writing.write();
    } catch (IOException refused) {
      throw cantWrite(where, refused);
    }
  }

  public static UsageException cantWrite(Path where, IOException refused) {
    return new UsageException(
        refused, "disk.cant-write", "can't write to {0}: {1}", where, reason(refused));
  }

  /**
   * The bytes of a file.
   *
   * @throws UsageException where it can't be read, is no plain file or has more than 512 MB
   */
  public static byte[] read(Path file) {
    return reading(file, () -> bytes(file));
  }

  /**
   * The same, for those who say by {@link #reason} what is wrong.
   *
   * @throws IOException where it can't be read, is no plain file or has more than 512 MB
   */
  public static byte[] bytes(Path file) throws IOException {
    return PlainFile.bytes(file);
  }

  /**
   * Refuses what is no plain file below a folder: a pipe would be waited for without end, a device
   * may have no end, and a link that leads out of the folder names another's file.
   *
   * @throws IOException where it is none, or not there
   */
  public static void requireFile(Path folder, Path file) throws IOException {
    requireWithin(folder, file);
    PlainFile.require(file);
  }

  /**
   * Refuses a link that leads out of a folder.
   *
   * @throws IOException where it does, or leads nowhere
   */
  public static void requireWithin(Path folder, Path path) throws IOException {
    if (!isWithin(folder, path)) {
      throw PlainFile.leadsOut();
    }
  }

  /** Whether a file or folder lies below a folder once all links are followed. */
  public static boolean isWithin(Path folder, Path path) throws IOException {
    return path.toRealPath().startsWith(folder.toRealPath());
  }

  /**
   * Opens a file of a folder to be written to, and makes it where it isn't there.
   *
   * @throws IOException as {@link #requireFile} does
   */
  public static FileChannel open(Path folder, String name) throws IOException {
    Path file = folder.resolve(name);
    if (Files.exists(file, LinkOption.NOFOLLOW_LINKS)) {
      requireFile(folder, file);
    }
    return FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
  }

  /**
   * What lies in a folder, in the order of the names.
   *
   * @throws UsageException where it can't be read
   */
  public static List<Path> list(Path folder) {
    return reading(
        folder,
        () -> {
          try (Stream<Path> entries = Files.list(folder)) {
            return entries.sorted(Comparator.comparing(Disk::name)).toList();
          }
        });
  }

  /** The last part of a path; empty where it has none. */
  public static String name(Path path) {
    Path name = path.getFileName();
    return name == null ? "" : name.toString();
  }

  /** The day that a file or folder is named after; empty where its name is no date. */
  public static Optional<LocalDate> day(Path path) {
    try {
      return Optional.of(LocalDate.parse(name(path)));
    } catch (DateTimeException noDate) {
      return Optional.empty();
    }
  }

  /** Says why the disk refused something. */
  public static Message reason(IOException refused) {
    if (refused instanceof PlainFile.Refusal refusal) {
      return refusal.why;
    }
    if (refused instanceof AccessDeniedException) {
      return say("disk.not-permitted", "that is not permitted");
    }
    if (refused instanceof NoSuchFileException) {
      return say("disk.nothing-there", "there is no such file or folder");
    }
    if (refused instanceof FileAlreadyExistsException) {
      return say("disk.already-there", "something of that name is there already");
    }
    String given = refused instanceof FileSystemException file ? file.getReason() : null;
    String reason = given == null ? refused.getMessage() : given;
    return reason == null ? say("disk.no-reason", "the disk gives no reason") : Message.of(reason);
  }

  /** Writes a file that must not be there yet. */
  public static void write(Path file, byte[] bytes, FileAttribute<?>... attributes)
      throws IOException {
    Set<OpenOption> asNew = Set.of(StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
    try (FileChannel channel = FileChannel.open(file, asNew, attributes)) {
      writeAt(channel, 0, bytes);
    }
  }

  /** Writes bytes at a place of a file and waits for the disk. */
  public static void writeAt(FileChannel channel, long place, byte[] bytes) throws IOException {
    ByteBuffer left = ByteBuffer.wrap(bytes);
    while (left.hasRemaining()) {
      channel.write(left, place + left.position());
    }
    channel.force(true);
  }

  /**
   * Waits until the disk knows which names a folder holds. Windows knows no such wait and needs
   * none: there names are written through.
   */
  public static void force(Path folder) throws IOException {
    if (isPosix(folder)) {
      try (FileChannel names = FileChannel.open(folder, StandardOpenOption.READ)) {
        names.force(true);
      }
    }
  }

  /** Makes a folder and those above it that are missing. */
  public static void makeFolders(Path folder, FileAttribute<?>... attributes) throws IOException {
    Path above = folder.toAbsolutePath().getParent();
    if (above != null && !Files.isDirectory(folder)) {
      makeFolders(above);
      Files.createDirectory(folder, attributes);
      force(above);
    }
  }

  private static Path above(Path path) {
    return Objects.requireNonNull(path.toAbsolutePath().getParent());
  }

  /** Writes a file that must not be there yet and that its owner alone may read. */
  public static void writePrivate(Path file, byte[] bytes) throws IOException {
    write(file, bytes, ownersOnly(above(file), "rw-------"));
    force(above(file));
  }

  /** Makes a folder that its owner alone may look into, if it isn't there. */
  public static void makePrivateFolder(Path folder) throws IOException {
    makeFolders(folder, ownersOnly(folder, "rwx------"));
  }

  /** Windows gives a new file the rights of its folder, which a user's own folder keeps to him. */
  private static FileAttribute<?>[] ownersOnly(Path folder, String rights) {
    return isPosix(folder)
        ? new FileAttribute<?>[] {
          PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString(rights))
        }
        : new FileAttribute<?>[] {};
  }

  /** Puts a file in another's place in one step, see {@link #replace(Path, byte[], Path)}. */
  public static void replace(Path file, byte[] bytes) throws IOException {
    replace(file, bytes, above(file));
  }

  /**
   * Puts a file in another's place in one step: a reader finds the old one or the new one, whole.
   * The rights of the old one are kept.
   *
   * @param aside the folder, on the same disk, in which the new one is written first, hidden
   */
  public static void replace(Path file, byte[] bytes, Path aside) throws IOException {
    Path hidden = free(aside, HIDDEN + file.getFileName() + "-");
    try {
      write(hidden, bytes);
      if (Files.exists(file) && isPosix(file)) {
        Files.setPosixFilePermissions(hidden, Files.getPosixFilePermissions(file));
      }
      Files.move(hidden, file, StandardCopyOption.ATOMIC_MOVE);
    } finally {
      Files.deleteIfExists(hidden);
    }
    force(above(file));
  }

  /**
   * Whether others than its owner may read or change a file. Windows keeps what lies in a user's
   * own folder to him; there the answer is no.
   */
  public static boolean isOpenToOthers(Path file) throws IOException {
    return isPosix(file)
        && Files.isRegularFile(file)
        && !Collections.disjoint(Files.getPosixFilePermissions(file), OTHERS);
  }

  private static boolean isPosix(Path path) {
    return path.getFileSystem().supportedFileAttributeViews().contains("posix");
  }

  /** Deletes a folder with all that lies in it. */
  public static void delete(Path folder) throws IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(file);
      }
    }
  }

  /** The first name with a number at its end, from 1, that nothing has yet. */
  public static Path free(Path folder, String name) {
    int number = 1;
    while (Files.exists(folder.resolve(name + number))) {
      number++;
    }
    return folder.resolve(name + number);
  }
}
