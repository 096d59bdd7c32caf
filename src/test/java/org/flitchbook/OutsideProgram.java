package org.flitchbook;

import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;

/**
 * Finds a program that a test asks for a second opinion, such as {@code pdftotext}.
 *
 * <p>Where it is missing the test is skipped, unless {@code -Dflitchbook.outside=required} was
 * given: then the test fails.
 */
public final class OutsideProgram {

  private OutsideProgram() {}

  /**
   * Finds a program.
   *
   * @param name its name without folder or ending
   * @return the file, fit to start a process with
   */
  public static Path find(String name) {
    boolean required = "required".equals(System.getProperty("flitchbook.outside"));
    return find(name, System.getenv("PATH"), required);
  }

  static Path find(String name, String path, boolean required) {
    Optional<Path> found = search(name, path);
    if (found.isEmpty() && required) {
      throw new AssertionError("the program " + name + " is required and not on the PATH " + path);
    }
    Assumptions.assumeTrue(found.isPresent(), () -> "the program " + name + " is not installed");
    return found.orElseThrow();
  }

  private static Optional<Path> search(String name, String path) {
    boolean windows = System.getProperty("os.name").toLowerCase(Locale.ROOT).contains("windows");
    String file = windows ? name + ".exe" : name;
    return Stream.of(path.split(Pattern.quote(File.pathSeparator), -1))
        .filter(folder -> !folder.isEmpty())
        .map(folder -> Path.of(folder, file))
        .filter(Files::isExecutable)
        .findFirst();
  }
}
