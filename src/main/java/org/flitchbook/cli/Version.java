package org.flitchbook.cli;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import picocli.CommandLine.IVersionProvider;

/** Tells the version that the build wrote into {@code version.txt}. */
final class Version implements IVersionProvider {

  @Override
  public String[] getVersion() throws IOException {
    try (InputStream in = Version.class.getResourceAsStream("version.txt")) {
      if (in == null) {
        throw new AssertionError("version.txt is not in the jar");
      }
      String version = new String(in.readAllBytes(), StandardCharsets.UTF_8).strip();
      return new String[] {"flitchbook " + version};
    }
  }
}
