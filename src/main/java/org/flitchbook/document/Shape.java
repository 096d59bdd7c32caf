package org.flitchbook.document;

/** The sign that a marker is drawn with. */
public enum Shape {
  DOT,
  RING,
  CROSS,
  FLAG
}
