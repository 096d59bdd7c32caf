package org.flitchbook.document;

import java.util.Objects;

/** A piece of text in one style. */
public record Span(String text, Style style) {
  public Span {
    Objects.requireNonNull(text, "span");
    Objects.requireNonNull(style, "style of a span");
  }
}
