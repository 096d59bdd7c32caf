package org.flitchbook.document;

import java.util.Objects;

/** A cell of a table; its text may be empty. A tone other than plain puts its symbol in front. */
public record Cell(Text text, Tone tone) {
  public Cell {
    Objects.requireNonNull(text, "cell text");
    Objects.requireNonNull(tone, "cell tone");
  }
}
