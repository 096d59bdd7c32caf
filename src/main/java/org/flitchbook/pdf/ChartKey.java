package org.flitchbook.pdf;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.flitchbook.document.Chart;
import org.flitchbook.document.Curve;
import org.flitchbook.document.Style;
import org.jspecify.annotations.Nullable;

/** The key of a chart: what the y axis measures, and the name of each curve beside its stroke. */
final class ChartKey {
  private static final double SAMPLE = 22;
  private static final double GAP = 16;

  private record Item(@Nullable Curve curve, Line name, double x, int row) {}

  private final List<Item> items = new ArrayList<>();
  private final double left;
  private final double right;
  private double x;
  private int row;

  ChartKey(Setting setting, Chart chart, double left, double width) {
    this.left = left;
    this.right = left + width;
    this.x = left;
    if (!chart.y().label().isBlank()) {
      add(null, setting.lines(Type.SMALL, Style.MUTED, chart.y().label(), width), 0);
    }
    for (Curve curve : chart.curves()) {
      add(curve, setting.lines(Type.SMALL, Style.PLAIN, curve.name(), width - SAMPLE), SAMPLE);
    }
  }

  /** A name goes on in the row where it still fits; one longer than a row is broken. */
  private void add(@Nullable Curve curve, List<Line> name, double sample) {
    double length = sample + name.get(0).width();
    if (x > left && x + length > right) {
      x = left;
      row++;
    }
    items.add(new Item(curve, name.get(0), x, row));
    x += length + GAP;
    for (Line more : name.subList(1, name.size())) {
      row++;
      items.add(new Item(null, more, left + sample, row));
      x = right;
    }
  }

  double height() {
    return items.isEmpty() ? 0 : (row + 1) * Type.SMALL.leading + 5;
  }

  void draw(Pen pen, Owner of, double top) throws IOException {
    for (Item item : items) {
      double y = top + item.row() * Type.SMALL.leading;
      double words = item.x();
      if (item.curve() != null) {
        Path sample = new Path().move(words, y + Type.SMALL.leading / 2);
        Strokes.of(item.curve().stroke())
            .draw(pen, of, sample.line(words + SAMPLE - 5, y + Type.SMALL.leading / 2));
        words += SAMPLE;
      }
      pen.line(of, Type.SMALL, words, y, item.name());
    }
  }
}
