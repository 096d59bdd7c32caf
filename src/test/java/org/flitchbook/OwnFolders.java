package org.flitchbook;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.extension.Extension;

/**
 * Gives each Java machine of the tests a home folder and a temporary folder of its own below {@code
 * target}: what the user's home holds changes no test, and two runs side by side never meet. JUnit
 * loads this class before the first test; the folders go when the machine ends.
 */
public final class OwnFolders implements Extension {

  private static final String HOME = "user.home";
  private static final String TEMPORARY = "java.io.tmpdir";
  private static final Path ROOT = make();

  /** The empty folder that stands for the user's home. */
  public static Path home() {
    return ROOT.resolve("home");
  }

  /** A folder of that name that lasts as long as the Java machine, for what tests share. */
  public static Path shared(String name) {
    return ROOT.resolve("shared").resolve(name);
  }

  /** The options that give another Java machine the same folders, locale and zone. */
  public static List<String> options() {
    return Stream.of(HOME, TEMPORARY, "user.language", "user.country", "user.timezone")
        .map(name -> "-D" + name + "=" + System.getProperty(name, ""))
        .toList();
  }

  private static Path make() {
    try {
      Path target = Files.createDirectories(Path.of("target").toAbsolutePath());
      Path root = Files.createTempDirectory(target, "tests-");
      Files.createDirectory(root.resolve("home"));
      Files.createDirectory(root.resolve("tmp"));
      System.setProperty(HOME, root.resolve("home").toString());
      System.setProperty(TEMPORARY, root.resolve("tmp").toString());
      Runtime.getRuntime().addShutdownHook(new Thread(() -> delete(root)));
      return root;
    } catch (IOException refused) {
      throw new UncheckedIOException(refused);
    }
  }

  private static void delete(Path root) {
    try (Stream<Path> all = Files.walk(root)) {
      for (Path each : all.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(each);
      }
    } catch (IOException left) {
      throw new UncheckedIOException(left);
    }
  }
}
