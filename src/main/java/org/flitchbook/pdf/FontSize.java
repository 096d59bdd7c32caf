package org.flitchbook.pdf;

/**
 * The four sizes of type, in points, each with the distance of its lines, and a fifth for the
 * symbol of a verdict.
 */
enum FontSize {
  SIGN(24, 28),
  LARGE(14, 18),
  HEAD(10.5, 14),
  BODY(8.5, 11.6),
  SMALL(7, 9.2);

  /** Height of a capital letter of the typeface, in parts of the size. */
  private static final double CAPITAL = 0.729;

  final double points;
  final double leading;

  FontSize(double points, double leading) {
    this.points = points;
    this.leading = leading;
  }

  /** Distance from the top of a line to its baseline; it centres the capitals. */
  double baseline() {
    return leading / 2 + points * CAPITAL / 2;
  }
}
