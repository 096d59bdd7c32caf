package org.flitchbook.document;

/** Where text stands in its column. */
public enum Align {
  LEFT,
  RIGHT,
  CENTER
}
