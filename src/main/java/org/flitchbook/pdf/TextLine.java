package org.flitchbook.pdf;

import java.util.List;
import java.util.Optional;
import org.flitchbook.document.Text;

/**
 * A line of set text.
 *
 * @param pieces in order; none for an empty line
 * @param width in points, a space at the end not counted
 */
record TextLine(FontSize size, List<Piece> pieces, double width) {
  /**
   * A piece of one style that leads to one place.
   *
   * @param x distance from the begin of the line, in points
   */
  record Piece(
      String text, Text.Style style, Optional<Text.Target> target, double x, double width) {}

  /** The height of lines of one size below each other. */
  static double height(List<TextLine> lines) {
    return lines.isEmpty() ? 0 : lines.size() * lines.get(0).size().leading;
  }
}
