package org.flitchbook.document;

/** How a span is set. */
public enum Style {
  PLAIN,
  STRONG,
  MUTED,
  STRUCK
}
