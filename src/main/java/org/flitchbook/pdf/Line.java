package org.flitchbook.pdf;

import java.util.List;
import org.flitchbook.document.Style;

/**
 * A line of set text.
 *
 * @param pieces in order; none for an empty line
 * @param width in points, a space at the end not counted
 */
record Line(List<Piece> pieces, double width) {
  /**
   * A piece of one style.
   *
   * @param x distance from the begin of the line, in points
   */
  record Piece(String text, Style style, double x, double width) {}
}
