package org.flitchbook.pdf;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.flitchbook.document.Chart;

/**
 * Sets a chart: its caption, the key, the labels of the bands and the plot. The plot is drawn from
 * the ground up: bands, grid, limit lines, curves, markers, labels.
 */
final class ChartSetter {
  private static final double HATCH = 4;

  private final TextLayout text;
  private final Chart chart;
  private final ChartLayout layout;

  ChartSetter(TextLayout text, Chart chart, double left, double width) {
    this.text = text;
    this.chart = chart;
    this.layout = new ChartLayout(text, chart, left, width);
  }

  static void set(LayoutContext context, Chart chart) throws IOException {
    Rectangle frame = context.frame();
    if (!chart.caption().isBlank()) {
      TextSetter.caption(context, context.root().child("P"), chart.caption());
    }
    ChartSetter setter = new ChartSetter(context.text(), chart, frame.left(), frame.width());
    Element figure = context.root().child("Figure").alternative(chart.alternative());
    Pen.Drawing drawing =
        (pen, top) -> {
          double foot = pen.fromBottom(top + setter.height());
          figure.box(frame.left(), foot, frame.right(), foot + setter.height());
          setter.draw(pen, figure, top);
        };
    double before = chart.caption().isBlank() ? 12 : 3;
    context.flow().add(Flow.Strip.of(before, setter.height(), false, drawing));
  }

  double height() {
    return layout.height();
  }

  void draw(Pen pen, Element figure, double top) throws IOException {
    Plot plot = layout.plot(top);
    layout.key.draw(pen, figure, top);
    drawBands(pen, figure, plot);
    layout.bands.draw(pen, figure, plot.top());
    new ChartAxes(text, plot, figure).draw(pen, layout.xLabel);
    for (Chart.Guide guide : chart.guides()) {
      Path line = new Path().move(plot.left(), plot.y(guide.at()));
      line.line(plot.right(), plot.y(guide.at()));
      pen.stroke(figure, Color.BLACK, 0.5, Pen.Dash.LIMIT, line);
    }
    List<Path> paths = drawCurves(pen, figure, plot);
    new ChartLabels(text, chart, plot, paths).draw(pen, figure);
  }

  /** Draws the curves and returns what was drawn. */
  private List<Path> drawCurves(Pen pen, Element figure, Plot plot) throws IOException {
    List<Path> paths = new ArrayList<>();
    for (Chart.Curve curve : chart.curves()) {
      List<Path> stretches = curve.stretches().stream().map(plot::path).toList();
      List<Path> bridges = bridges(curve, plot);
      paths.addAll(stretches);
      paths.addAll(bridges);
      Pen.Drawing drawing =
          (clipped, y) -> {
            for (Path path : bridges) {
              clipped.stroke(figure, Color.GREY, 0.5, Pen.Dash.BRIDGE, path);
            }
            for (Path path : stretches) {
              ChartSymbols.draw(clipped, figure, curve.stroke(), path);
            }
          };
      pen.within(figure, plot.area(), drawing);
    }
    return paths;
  }

  /** From the last point before each break to the first one after it. */
  private static List<Path> bridges(Chart.Curve curve, Plot plot) {
    List<Path> bridges = new ArrayList<>();
    for (int i = 1; i < curve.stretches().size(); i++) {
      List<Chart.Point> before = curve.stretches().get(i - 1);
      Chart.Point from = before.get(before.size() - 1);
      Chart.Point to = curve.stretches().get(i).get(0);
      Path bridge = new Path().move(plot.x(from.x()), plot.y(from.y()));
      bridges.add(bridge.line(plot.x(to.x()), plot.y(to.y())));
    }
    return bridges;
  }

  /**
   * A band within a wider one, such as a gap in a step, is hatched. Of the others every second one
   * is shaded, so that neighbours differ.
   */
  private void drawBands(Pen pen, Element figure, Plot plot) throws IOException {
    List<Chart.Band> inner = new ArrayList<>();
    List<Chart.Band> outer = new ArrayList<>();
    for (Chart.Band band : chart.bands()) {
      boolean within = chart.bands().stream().anyMatch(other -> isWithin(band, other));
      (within ? inner : outer).add(band);
    }
    outer.sort(Comparator.comparingDouble(Chart.Band::from));
    for (int i = 0; i < outer.size(); i++) {
      Rectangle area = plot.area(outer.get(i));
      pen.fill(figure, i % 2 == 0 ? Color.SHADE : Color.WHITE, area);
      drawSides(pen, figure, Color.HAIR, area);
    }
    for (Chart.Band band : inner) {
      hatch(pen, figure, plot.area(band));
    }
  }

  private static boolean isWithin(Chart.Band band, Chart.Band other) {
    boolean narrower = band.to() - band.from() < other.to() - other.from();
    return narrower && other.from() <= band.from() && band.to() <= other.to();
  }

  private static void hatch(Pen pen, Element figure, Rectangle area) throws IOException {
    Path lines = new Path();
    for (double y = area.top(); y < area.bottom() + area.width(); y += HATCH) {
      lines.move(area.left(), y).line(area.right(), y - area.width());
    }
    Pen.Drawing drawing =
        (clipped, y) -> clipped.stroke(figure, Color.GREY, 0.3, Pen.Dash.NONE, lines);
    pen.fill(figure, Color.WHITE, area);
    pen.within(figure, area, drawing);
    drawSides(pen, figure, Color.GREY, area);
  }

  private static void drawSides(Pen pen, Element figure, Color color, Rectangle area)
      throws IOException {
    pen.hairline(figure, color, area.left(), area.top(), area.left(), area.bottom());
    pen.hairline(figure, color, area.right(), area.top(), area.right(), area.bottom());
  }
}
