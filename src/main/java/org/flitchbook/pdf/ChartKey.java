package org.flitchbook.pdf;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.flitchbook.document.Chart;
import org.flitchbook.document.Text;

/**
 * The key of a chart: what the y axis measures, the name of each curve beside its stroke, and that
 * of each kind of mark beside its sign.
 */
final class ChartKey {
  private static final double STROKE = 22;
  private static final double SIGN = 9;
  private static final double GAP = 14;
  private static final double MIDDLE = FontSize.SMALL.leading / 2;

  /** Draws what a name stands for, with its left edge and its middle there. */
  private interface Sample {
    void draw(Pen pen, double x, double middle) throws IOException;
  }

  private static final Sample NONE = (pen, x, middle) -> {};

  private record Item(Sample sample, TextLine name, double x, double words, int row) {}

  private final TextLayout text;
  private final List<Item> items = new ArrayList<>();
  private final double left;
  private final double width;
  private double x;
  private int row;

  ChartKey(TextLayout text, Chart chart, double left, double width) {
    this.text = text;
    this.left = left;
    this.width = width;
    this.x = left;
    if (!chart.y().label().isBlank()) {
      add(NONE, 0, Text.Style.MUTED, chart.y().label());
    }
    for (Chart.Curve curve : chart.curves()) {
      add(stroke(curve), STROKE, Text.Style.PLAIN, curve.name());
    }
    for (Chart.Marks marks : chart.marks()) {
      if (!marks.name().isBlank() && !marks.points().isEmpty()) {
        add(sign(marks.shape()), SIGN, Text.Style.PLAIN, marks.name());
      }
    }
  }

  private static Sample stroke(Chart.Curve curve) {
    return (pen, x, middle) ->
        ChartSymbols.draw(pen, curve.stroke(), Plot.line(x, middle, x + STROKE - 5, middle));
  }

  private static Sample sign(Chart.Shape shape) {
    double down = shape == Chart.Shape.STROKE ? 3.5 : 0;
    return (pen, x, middle) -> ChartSymbols.draw(pen, shape, x + 3.2, middle + down);
  }

  /** A name goes on in the row where it still fits; one longer than a row is broken. */
  private void add(Sample sample, double room, Text.Style style, String words) {
    List<TextLine> name = text.lines(FontSize.SMALL, style, words, width - room);
    double length = room + name.get(0).width();
    if (x > left && x + length > left + width) {
      x = left;
      row++;
    }
    items.add(new Item(sample, name.get(0), x, x + room, row));
    x += length + GAP;
    for (TextLine more : name.subList(1, name.size())) {
      row++;
      items.add(new Item(NONE, more, left, left + room, row));
      x = left + width;
    }
  }

  double height() {
    return items.isEmpty() ? 0 : (row + 1) * FontSize.SMALL.leading + 5;
  }

  void draw(Pen pen, double top) throws IOException {
    for (Item item : items) {
      double y = top + item.row() * FontSize.SMALL.leading;
      item.sample().draw(pen, item.x(), y + MIDDLE);
      pen.line(item.words(), y, item.name());
    }
  }
}
