package org.flitchbook;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assertions;
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

  /** What a program prints on both of its streams; it must end well. */
  public static String ask(String program, Object... args) {
    List<String> words = new ArrayList<>(List.of(find(program).toString()));
    Stream.of(args).map(Object::toString).forEach(words::add);
    ProcessBuilder builder = new ProcessBuilder(words).redirectErrorStream(true);
    builder.environment().put("LC_ALL", "C.UTF-8");
    builder.environment().put("HOME", OwnFolders.home().toString());
    try {
      Process process = builder.start();
      String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
      Assertions.assertEquals(0, process.waitFor(), words + said);
      return said;
    } catch (IOException | InterruptedException failed) {
      throw new AssertionError(words.toString(), failed);
    }
  }

  /**
   * Has OpenSSL verify a signature that stands apart from what it covers.
   *
   * @param signature CMS in DER, as CAdES asks for it
   * @param folder where OpenSSL may write
   */
  public static void verifyCades(Path signature, Path content, Path certificate, Path folder) {
    List<Object> words = new ArrayList<>(List.of("cms", "-verify", "-binary", "-inform", "DER"));
    words.addAll(List.of("-in", signature, "-content", content, "-CAfile", certificate));
    words.addAll(List.of("-purpose", "any", "-cades", "-out", folder.resolve("verified")));
    String said = ask("openssl", words.toArray());
    Assertions.assertTrue(said.contains("CAdES Verification successful"), said);
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
