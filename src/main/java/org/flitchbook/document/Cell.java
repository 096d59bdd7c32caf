package org.flitchbook.document;

import java.util.Objects;
import java.util.Optional;

/**
 * A cell of a table; its text may be empty. A tone other than plain puts its symbol in front.
 *
 * @param scale drawn in place of the text, which then says in words what it shows
 */
public record Cell(Text text, Tone tone, Optional<Scale> scale) {
  public Cell {
    Objects.requireNonNull(text, "cell text");
    Objects.requireNonNull(tone, "cell tone");
    if (scale.isPresent()) {
      Demand.words("scale in words", text.plain());
    }
  }

  public Cell(Text text, Tone tone) {
    this(text, tone, Optional.empty());
  }

  /** A scale, and what it shows in words. */
  public static Cell of(Scale scale, String words) {
    return new Cell(Text.of(words), Tone.PLAIN, Optional.of(scale));
  }
}
