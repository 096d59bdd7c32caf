package org.flitchbook.desk;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.OpenOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Comparator;
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
    if (folder.getFileSystem().supportedFileAttributeViews().contains("posix")) {
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
