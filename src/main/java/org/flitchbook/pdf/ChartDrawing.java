package org.flitchbook.pdf;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.flitchbook.document.Chart;

/** Draws a chart, from the ground up: bands, grid, limit lines, curves, markers, labels. */
final class ChartDrawing {
  private static final double HATCH = 4;

  private final Setting setting;
  private final Chart chart;
  private final ChartLayout layout;
  private final Element figure;

  ChartDrawing(Setting setting, Chart chart, ChartLayout layout, Element figure) {
    this.setting = setting;
    this.chart = chart;
    this.layout = layout;
    this.figure = figure;
  }

  void draw(Pen pen, double top) throws IOException {
    Plot plot = layout.plot(top);
    layout.key().draw(pen, figure, top);
    drawBands(pen, plot);
    layout.bands().draw(pen, figure, plot.top());
    new ChartAxes(setting, plot, figure).draw(pen, layout.xLabel());
    for (Chart.Guide guide : chart.guides()) {
      Path line = new Path().move(plot.left(), plot.y(guide.at()));
      pen.stroke(figure, Ink.BLACK, 0.5, Dash.LIMIT, line.line(plot.right(), plot.y(guide.at())));
    }
    Obstacles obstacles = drawCurves(pen, plot);
    MarkerSetter markers = new MarkerSetter(setting, plot, figure, obstacles);
    markers.drawSigns(pen, chart.marks());
    new GuideLabels(setting, plot, figure, obstacles).draw(pen, chart.guides());
    markers.drawLabels(pen, chart.marks());
  }

  private Obstacles drawCurves(Pen pen, Plot plot) throws IOException {
    List<Path> paths = new ArrayList<>();
    for (Chart.Curve curve : chart.curves()) {
      List<Path> stretches = curve.stretches().stream().map(s -> Thinning.path(s, plot)).toList();
      List<Path> bridges = bridges(curve, plot);
      paths.addAll(stretches);
      paths.addAll(bridges);
      Drawing drawing =
          (clipped, y) -> {
            for (Path path : bridges) {
              clipped.stroke(figure, Ink.GREY, 0.5, Dash.BRIDGE, path);
            }
            for (Path path : stretches) {
              Strokes.of(curve.stroke()).draw(clipped, figure, path);
            }
          };
      pen.within(figure, plot.left(), plot.top(), plot.width(), plot.height(), drawing);
    }
    return new Obstacles(plot, paths, chart.guides());
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
  private void drawBands(Pen pen, Plot plot) throws IOException {
    List<Chart.Band> inner = new ArrayList<>();
    List<Chart.Band> outer = new ArrayList<>();
    for (Chart.Band band : chart.bands()) {
      boolean within = chart.bands().stream().anyMatch(other -> isWithin(band, other));
      (within ? inner : outer).add(band);
    }
    outer.sort(Comparator.comparingDouble(Chart.Band::from));
    for (int i = 0; i < outer.size(); i++) {
      shade(pen, plot, outer.get(i), i % 2 == 0 ? Ink.SHADE : Ink.WHITE);
    }
    for (Chart.Band band : inner) {
      double left = Math.max(plot.left(), plot.x(band.from()));
      hatch(pen, plot, left, Math.max(right(plot, band) - left, 0.3));
    }
  }

  private static double right(Plot plot, Chart.Band band) {
    return Math.min(plot.right(), plot.x(band.to()));
  }

  private void shade(Pen pen, Plot plot, Chart.Band band, Ink ink) throws IOException {
    double left = Math.max(plot.left(), plot.x(band.from()));
    double right = Math.max(right(plot, band), left + 0.3);
    pen.fill(figure, ink, left, plot.top(), right - left, plot.height());
    pen.hairline(figure, Ink.HAIR, left, plot.top(), left, plot.bottom());
    pen.hairline(figure, Ink.HAIR, right, plot.top(), right, plot.bottom());
  }

  private static boolean isWithin(Chart.Band band, Chart.Band other) {
    boolean narrower = band.to() - band.from() < other.to() - other.from();
    return narrower && other.from() <= band.from() && band.to() <= other.to();
  }

  private void hatch(Pen pen, Plot plot, double left, double width) throws IOException {
    Path lines = new Path();
    for (double y = plot.top(); y < plot.bottom() + width; y += HATCH) {
      lines.move(left, y).line(left + width, y - width);
    }
    Drawing drawing = (clipped, y) -> clipped.stroke(figure, Ink.GREY, 0.3, Dash.NONE, lines);
    pen.fill(figure, Ink.WHITE, left, plot.top(), width, plot.height());
    pen.within(figure, left, plot.top(), width, plot.height(), drawing);
    pen.hairline(figure, Ink.GREY, left, plot.top(), left, plot.bottom());
    pen.hairline(figure, Ink.GREY, left + width, plot.top(), left + width, plot.bottom());
  }
}
