package org.flitchbook.document;

/** How a curve is drawn, so that curves differ without colour. */
public enum Stroke {
  SOLID,
  DASHED,
  DOTTED,
  THIN,
  THIN_DASHED
}
