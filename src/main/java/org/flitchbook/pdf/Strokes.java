package org.flitchbook.pdf;

import java.io.IOException;
import org.flitchbook.document.Chart;

/** How each stroke is drawn: they differ in pattern and weight, not in colour. */
record Strokes(Ink ink, double weight, Dash dash) {
  static Strokes of(Chart.Stroke stroke) {
    return switch (stroke) {
      case SOLID -> new Strokes(Ink.BLACK, 1.15, Dash.NONE);
      case DASHED -> new Strokes(Ink.BLACK, 0.9, Dash.LONG);
      case DOTTED -> new Strokes(Ink.BLACK, 1.2, Dash.DOTS);
      case THIN -> new Strokes(Ink.GREY, 0.6, Dash.NONE);
      case THIN_DASHED -> new Strokes(Ink.GREY, 0.7, Dash.LONG);
    };
  }

  void draw(Pen pen, Owner of, Path path) throws IOException {
    pen.stroke(of, ink, weight, dash, path);
  }
}
