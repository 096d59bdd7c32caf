package org.flitchbook.cli;

import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** Where the keys lie. */
final class KeysOption {

  @Option(
      names = "--keys",
      paramLabel = "DIR",
      description = "the folder of the keys; else .flitchbook/keys in your home folder")
  private @Nullable Path keys;

  Path folder() {
    return keys == null ? Path.of(System.getProperty("user.home"), ".flitchbook", "keys") : keys;
  }
}
