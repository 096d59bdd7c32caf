package org.flitchbook.practice;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.flitchbook.input.SourceFile;
import org.flitchbook.json.Binder;

/** The numbers of common practice as the tool brings them along, for the tests. */
public final class ToolPractice {

  private static final Practice PRACTICE = read();

  private ToolPractice() {}

  public static Practice get() {
    return PRACTICE;
  }

  /** The file itself. */
  public static SourceFile file() {
    try {
      return SourceFile.of(Practice.FILE, Files.readAllBytes(Path.of(Practice.FILE)));
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }

  private static Practice read() {
    Binder.Bound<Practice> read = Practice.read(List.of(file()));
    return read.value().orElseThrow(() -> new AssertionError(read.faults().toString()));
  }
}
