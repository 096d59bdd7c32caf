package org.flitchbook.desk;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.OpenOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Comparator;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Stream;

/** Writes so that it is there after a power cut: what returns has reached the disk. */
final class Disk {

  private Disk() {}

  /** Writes a file that must not be there yet. */
  static void write(Path file, byte[] bytes) throws IOException {
    Set<OpenOption> asNew = Set.of(StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
    try (FileChannel channel = FileChannel.open(file, asNew)) {
      writeAt(channel, 0, bytes);
    }
  }

  /** Writes bytes at a place of a file and waits for the disk. */
  static void writeAt(FileChannel channel, long place, byte[] bytes) throws IOException {
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
  static void force(Path folder) throws IOException {
    if (isPosix(folder)) {
      try (FileChannel names = FileChannel.open(folder, StandardOpenOption.READ)) {
        names.force(true);
      }
    }
  }

  /** Makes a folder and those above it that are missing. */
  static void makeFolders(Path folder) throws IOException {
    Path above = folder.toAbsolutePath().getParent();
    if (above != null && !Files.isDirectory(folder)) {
      makeFolders(above);
      Files.createDirectory(folder);
      force(above);
    }
  }

  /** Writes a file that must not be there yet and that its owner alone may read. */
  static void writePrivate(Path file, byte[] bytes) throws IOException {
    Path folder = Objects.requireNonNull(file.toAbsolutePath().getParent());
    Set<OpenOption> asNew = Set.of(StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
    try (FileChannel channel = FileChannel.open(file, asNew, ownersOnly(folder, "rw-------"))) {
      writeAt(channel, 0, bytes);
    }
    force(folder);
  }

  /** Makes a folder that its owner alone may look into, if it isn't there. */
  static void makePrivateFolder(Path folder) throws IOException {
    Path above = Objects.requireNonNull(folder.toAbsolutePath().getParent());
    if (!Files.isDirectory(folder)) {
      makeFolders(above);
      Files.createDirectory(folder, ownersOnly(above, "rwx------"));
      force(above);
    }
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
  static void replace(Path file, byte[] bytes) throws IOException {
    replace(file, bytes, Objects.requireNonNull(file.toAbsolutePath().getParent()));
  }

  /**
   * Puts a file in another's place in one step: whoever looks finds the old one or the new one,
   * whole. The rights of the old one are kept.
   *
   * @param aside the folder, on the same disk, in which the new one is written first, hidden
   */
  static void replace(Path file, byte[] bytes, Path aside) throws IOException {
    Path hidden = free(aside, Cabinet.HIDDEN + file.getFileName() + "-");
    try {
      write(hidden, bytes);
      if (Files.exists(file) && isPosix(file)) {
        Files.setPosixFilePermissions(hidden, Files.getPosixFilePermissions(file));
      }
      Files.move(hidden, file, StandardCopyOption.ATOMIC_MOVE);
    } finally {
      Files.deleteIfExists(hidden);
    }
    force(Objects.requireNonNull(file.toAbsolutePath().getParent()));
  }

  private static boolean isPosix(Path path) {
    return path.getFileSystem().supportedFileAttributeViews().contains("posix");
  }

  /** Deletes a folder with all that lies in it. */
  static void delete(Path folder) throws IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(file);
      }
    }
  }

  /** The first name with a number at its end, from 1, that nothing has yet. */
  static Path free(Path folder, String name) {
    int number = 1;
    while (Files.exists(folder.resolve(name + number))) {
      number++;
    }
    return folder.resolve(name + number);
  }
}
