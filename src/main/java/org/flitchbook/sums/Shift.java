package org.flitchbook.sums;

/** How a curve is read: as written, or with its uncertainty added or taken away. */
public enum Shift {
  AS_WRITTEN,
  UP,
  DOWN
}
