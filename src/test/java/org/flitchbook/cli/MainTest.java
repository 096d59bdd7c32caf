package org.flitchbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import org.flitchbook.Golden;
import org.junit.jupiter.api.Test;

final class MainTest {

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();

  private int run(String... args) {
    return Main.run(args, print(out), print(err));
  }

  private static PrintStream print(ByteArrayOutputStream bytes) {
    return new PrintStream(bytes, true, StandardCharsets.UTF_8);
  }

  private static String text(ByteArrayOutputStream bytes) {
    return bytes.toString(StandardCharsets.UTF_8).replace(System.lineSeparator(), "\n");
  }

  @Test
  void version_is_that_of_the_build() {
    assertEquals(0, run("--version"));
    assertTrue(text(out).matches("flitchbook \\d+\\.\\d+\\.\\d+\n"), text(out));
    assertEquals("", text(err));
  }

  @Test
  void help_is_the_golden_text() {
    assertEquals(0, run("--help"));
    Golden.check("cli/help.out", text(out));
  }

  @Test
  void no_job_is_wrong_use() {
    assertEquals(2, run());
    assertTrue(text(err).startsWith("Say what to do.\n\nUsage: flitchbook"), text(err));
    assertEquals("", text(out));
  }

  @Test
  void an_unknown_option_is_wrong_use() {
    assertEquals(2, run("--colour"));
    assertTrue(text(err).startsWith("Unknown option: '--colour'\n"), text(err));
    assertEquals("", text(out));
  }
}
