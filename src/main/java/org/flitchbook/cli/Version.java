package org.flitchbook.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import picocli.CommandLine.IVersionProvider;

/** Tells the version that the build wrote into {@code version.txt}. */
final class Version implements IVersionProvider {

  @Override
  public String[] getVersion() {
    return new String[] {"flitchbook " + ofTheProgram()};
  }

  /** Such as {@code 0.2.0}. */
  static String ofTheProgram() {
    try (InputStream in = Version.class.getResourceAsStream("version.txt")) {
      if (in == null) {
        throw new AssertionError("version.txt is not in the jar");
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8).strip();
    } catch (IOException unreadable) {
      throw new UncheckedIOException("version.txt can't be read", unreadable);
    }
  }
}
