package org.flitchbook.pdf;

/** How a stroke is broken. Lengths are in points. */
enum Dash {
  NONE,
  LONG,
  DOTS,
  LIMIT,
  BRIDGE;

  /** The PDF number of the shape of the ends: 0 cut, 1 round. */
  int cap() {
    return this == DOTS ? 1 : 0;
  }

  /** Lengths of stroke and gap by turns; none for an unbroken stroke. */
  float[] pattern() {
    return switch (this) {
      case NONE -> new float[] {};
      case LONG -> new float[] {5, 2.4f};
      case DOTS -> new float[] {0, 2.4f};
      case LIMIT -> new float[] {7, 1.6f, 1.2f, 1.6f};
      case BRIDGE -> new float[] {1.2f, 2.2f};
    };
  }
}
