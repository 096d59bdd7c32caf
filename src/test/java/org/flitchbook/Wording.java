package org.flitchbook;

import java.util.List;
import org.flitchbook.words.Words;

/** The tool's own wording, for tests. */
public final class Wording {

  public static final Words ENGLISH = Words.ENGLISH;

  private Wording() {}

  public static Words of(String language) {
    return Words.of(language, List.of()).words();
  }
}
