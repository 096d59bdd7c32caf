package org.flitchbook.document;

import java.util.Objects;

/**
 * What stands on each page: a line at the head, left and right, and one at the foot. The printer
 * adds "page n of N" to the right of the foot. Any part may be empty; a long part is wrapped.
 */
public record Running(String left, String right, String footLeft, String footRight) {
  public Running {
    Objects.requireNonNull(left, "running head, left");
    Objects.requireNonNull(right, "running head, right");
    Objects.requireNonNull(footLeft, "running foot, left");
    Objects.requireNonNull(footRight, "running foot, right");
  }
}
