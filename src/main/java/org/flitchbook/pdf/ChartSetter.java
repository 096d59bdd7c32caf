package org.flitchbook.pdf;

import java.io.IOException;
import org.flitchbook.document.Chart;

/** Sets a chart: its caption, then the key, the labels of the bands, the plot and its axes. */
final class ChartSetter {
  private final Press press;
  private final Chart chart;

  ChartSetter(Press press, Chart chart) {
    this.press = press;
    this.chart = chart;
  }

  void set() throws IOException {
    Frame frame = press.frame();
    if (!chart.caption().isBlank()) {
      WordSetter.caption(press, press.root().child("P"), chart.caption());
    }
    ChartLayout layout = new ChartLayout(press.setting(), chart, frame.left(), frame.width());
    Element figure = press.root().child("Figure").alternative(chart.alternative());
    Drawing drawing =
        (pen, top) -> {
          double foot = pen.fromBottom(top + layout.height());
          figure.box(frame.left(), foot, frame.right(), foot + layout.height());
          new ChartDrawing(press.setting(), chart, layout, figure).draw(pen, top);
        };
    double before = chart.caption().isBlank() ? 12 : 3;
    press.flow().add(Strip.of(before, layout.height(), false, drawing));
  }
}
