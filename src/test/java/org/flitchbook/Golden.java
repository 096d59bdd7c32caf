package org.flitchbook;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * Compares text with a file below {@code src/test/resources/org/flitchbook}.
 *
 * <p>With {@code -Dgolden.write=true} the file is written instead; the difference is then read like
 * code before it is committed.
 */
public final class Golden {

  private static final Path HOME = Path.of("src", "test", "resources", "org", "flitchbook");

  private Golden() {}

  /**
   * Compares a text, in UTF-8, with a golden file.
   *
   * @param name the file below the golden folder, such as {@code cli/help.out}
   */
  public static void check(String name, String actual) {
    Path file = HOME.resolve(name);
    try {
      if (Boolean.getBoolean("golden.write")) {
        Files.createDirectories(file.getParent());
        Files.writeString(file, actual);
      }
    } catch (IOException e) {
      throw new UncheckedIOException("can't write " + file, e);
    }
    assertEquals(text(name), actual, file.toString());
  }

  /** What a golden file holds. */
  public static String text(String name) {
    Path file = HOME.resolve(name);
    try {
      return Files.readString(file, StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException("no golden file " + file + "; see golden.write", e);
    }
  }
}
