package org.flitchbook.document;

import java.util.Objects;

/** Running text. */
public record Paragraph(Text text) implements Block {
  public Paragraph {
    Objects.requireNonNull(text, "paragraph");
  }
}
