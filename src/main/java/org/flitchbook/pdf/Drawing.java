package org.flitchbook.pdf;

import java.io.IOException;

/** Something to draw once its place on the page is known. */
@FunctionalInterface
interface Drawing {
  /** Draws with its upper edge at {@code top}, in points from the top of the paper. */
  void draw(Pen pen, double top) throws IOException;
}
