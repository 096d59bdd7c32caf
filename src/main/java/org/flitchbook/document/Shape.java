package org.flitchbook.document;

/** The sign that a marked point is drawn with. */
public enum Shape {
  /** A filled circle. */
  DOT,
  /** A hollow circle, for a reading that doesn't count. */
  RING,
  /** A filled diamond. */
  DIAMOND,
  /** A short stroke that stands on its point, such as a tick on the axis. */
  STROKE
}
