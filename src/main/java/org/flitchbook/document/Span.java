package org.flitchbook.document;

import java.util.Objects;
import java.util.Optional;

/**
 * A piece of text in one style.
 *
 * @param target where it leads, if anywhere
 */
public record Span(String text, Style style, Optional<Target> target) {
  public Span {
    Objects.requireNonNull(text, "span");
    Objects.requireNonNull(style, "style of a span");
    Objects.requireNonNull(target, "target of a span");
  }

  /** A span that leads nowhere. */
  public Span(String text, Style style) {
    this(text, style, Optional.empty());
  }

  /** The same look and target with other words. */
  public Span saying(String words) {
    return new Span(words, style, target);
  }
}
