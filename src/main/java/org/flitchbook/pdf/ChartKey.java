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
  private static final double RADIUS = 2.2;
  private static final double TALL = 7;
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
      Sample sample =
          (pen, from, middle) ->
              draw(pen, curve.stroke(), Plot.line(from, middle, from + STROKE - 5, middle));
      add(sample, STROKE, Text.Style.PLAIN, curve.name());
    }
    for (Chart.Marks marks : chart.marks()) {
      if (!marks.name().isBlank() && !marks.points().isEmpty()) {
        add(sign(marks.shape()), SIGN, Text.Style.PLAIN, marks.name());
      }
    }
  }

  private static Sample sign(Chart.Shape shape) {
    double down = shape == Chart.Shape.STROKE ? 3.5 : 0;
    return (pen, x, middle) -> draw(pen, shape, x + 3.2, middle + down);
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

  /** Strokes differ in pattern and weight, not in colour. */
  static void draw(Pen pen, Chart.Stroke stroke, List<Chart.Point> path) throws IOException {
    switch (stroke) {
      case SOLID -> pen.stroke(Color.BLACK, 1.15, Pen.Dash.NONE, path);
      case DASHED -> pen.stroke(Color.BLACK, 0.9, Pen.Dash.LONG, path);
      case DOTTED -> pen.stroke(Color.BLACK, 1.2, Pen.Dash.DOTS, path);
      case THIN -> pen.stroke(Color.GREY, 0.6, Pen.Dash.NONE, path);
      case THIN_DASHED -> pen.stroke(Color.GREY, 0.7, Pen.Dash.LONG, path);
    }
  }

  /** Draws a sign and returns the room that it takes. */
  static Rectangle draw(Pen pen, Chart.Shape shape, double x, double y) throws IOException {
    switch (shape) {
      case DOT -> pen.disc(Color.BLACK, RADIUS, x, y);
      case RING -> {
        pen.disc(Color.BLACK, RADIUS + 0.4, x, y);
        pen.disc(Color.WHITE, RADIUS - 0.4, x, y);
      }
      case DIAMOND -> diamond(pen, x, y, RADIUS + 1);
      case STROKE -> pen.rule(Color.BLACK, 0.9, x, y, x, y - TALL);
    }
    return shape == Chart.Shape.STROKE
        ? new Rectangle(x - 1, y - TALL, 2, TALL)
        : new Rectangle(x - RADIUS, y - RADIUS, 2 * RADIUS, 2 * RADIUS);
  }

  /** With a white edge, so that it stands out from a curve that runs through it. */
  private static void diamond(Pen pen, double x, double y, double r) throws IOException {
    List<Chart.Point> edge = Plot.line(x, y - r, x + r, y, x, y + r, x - r, y, x, y - r);
    pen.stroke(Color.WHITE, 1.4, Pen.Dash.NONE, edge);
    pen.fill(Color.BLACK, edge);
  }
}
