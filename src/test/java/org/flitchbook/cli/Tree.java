package org.flitchbook.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.flitchbook.OwnFolders;
import org.flitchbook.input.SourceFile;

/** Folders of the tests: the books that are copied, and what lies in a folder. */
final class Tree {

  static final Path DEMO = Path.of("demo-data", "wrenfold");
  static final String DAY = "2026-02-24";

  static final Path EXAMPLE =
      Path.of("src", "test", "resources", "org", "flitchbook", "lot", "book");

  private Tree() {}

  /** A copy of the example book, which has one lot that meets every limit. */
  static Path example(Path parent) {
    return copy(EXAMPLE, parent.resolve("book"));
  }

  /** A copy of the example book with its day closed, which is done once a Java machine. */
  static Path closedExample(Path parent) {
    return copy(Closed.EXAMPLE, parent.resolve("book"));
  }

  private static final class Closed {
    static final Path EXAMPLE = example(OwnFolders.shared("closed-example"));

    static {
      Ran.of("close", EXAMPLE.resolve(DAY)).expect(0);
    }
  }

  /** A copy of the demo book. */
  static Path demo(Path parent) {
    return copy(DEMO, parent.resolve("wrenfold"));
  }

  static Path copy(Path from, Path to) {
    for (Path each : walk(from)) {
      Path target = to.resolve(from.relativize(each).toString());
      write(
          target,
          () -> {
            Files.createDirectories(target.getParent());
            Files.copy(each, target);
          });
    }
    return to;
  }

  /** Replaces text that must be there in a file. */
  static void edit(Path file, String old, String now) {
    String text = text(file);
    if (!text.contains(old)) {
      throw new AssertionError(file + " does not contain " + old);
    }
    write(file, () -> Files.writeString(file, text.replace(old, now)));
  }

  static String text(Path file) {
    return new String(bytes(file), StandardCharsets.UTF_8);
  }

  static byte[] bytes(Path file) {
    try {
      return Files.readAllBytes(file);
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }

  /** The SHA-256 of every file below a folder, by its name within it. */
  static Map<String, String> hashes(Path folder, Predicate<Path> wanted) {
    Map<String, String> hashes = new TreeMap<>();
    for (Path each : walk(folder)) {
      if (wanted.test(each)) {
        hashes.put(name(folder, each), SourceFile.of("", bytes(each)).sha256());
      }
    }
    return hashes;
  }

  static Map<String, String> hashes(Path folder) {
    return hashes(folder, each -> true);
  }

  static List<String> names(Path folder) {
    return walk(folder).stream().map(each -> name(folder, each)).toList();
  }

  static String name(Path folder, Path file) {
    return folder.relativize(file).toString().replace('\\', '/');
  }

  /** Plain files only, in the order of their names; links are not followed. */
  static List<Path> walk(Path folder) {
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    try (Stream<Path> all = Files.walk(folder)) {
      return all.filter(each -> Files.isRegularFile(each, LinkOption.NOFOLLOW_LINKS))
          .sorted()
          .toList();
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }

  /** Deletes a folder with all that lies in it. */
  static void delete(Path folder) {
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path each : all.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(each);
      }
    } catch (IOException refused) {
      throw new UncheckedIOException(refused);
    }
  }

  /** Something done to the disk. */
  @FunctionalInterface
  interface Deed {
    void run() throws IOException;
  }

  /** Writes a file, and its folder where it has none. */
  static void write(Path file, String text) {
    write(
        file,
        () -> {
          Files.createDirectories(file.getParent());
          Files.writeString(file, text);
        });
  }

  static void write(Path file, Deed deed) {
    try {
      deed.run();
    } catch (IOException refused) {
      throw new UncheckedIOException(file.toString(), refused);
    }
  }
}
