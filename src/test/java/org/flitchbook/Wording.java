package org.flitchbook;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.flitchbook.input.Fault;
import org.flitchbook.input.SourceFile;
import org.flitchbook.words.Words;

/** The tool's own wording, for tests. */
public final class Wording {

  public static final Words ENGLISH = of("en");

  private Wording() {}

  /** The file of a language among the templates. */
  public static SourceFile file(String language) {
    String name = "templates/words/" + language + ".json";
    try {
      return SourceFile.of(name, Files.readAllBytes(Path.of(name)));
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }

  public static Words of(String language) {
    List<Fault> faults = new ArrayList<>();
    return Words.read(file(language), faults)
        .orElseThrow(() -> new AssertionError(faults.toString()));
  }
}
