package org.flitchbook.pdf;

/** The part of a page that content may use, in points from the left and top of the paper. */
record Frame(double left, double top, double width, double bottom) {
  double height() {
    return bottom - top;
  }

  double right() {
    return left + width;
  }
}
