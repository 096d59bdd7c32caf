package org.flitchbook.pdf;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Stream;
import org.flitchbook.document.Chart;
import org.flitchbook.document.Text;

/**
 * Sets a chart: its caption, the key, the labels of the bands and the plot. The plot is drawn from
 * the ground up: bands, grid, limit lines, curves, markers, labels. Charts of the same width have
 * their plots below each other, as long as no label of a y axis is longer than three digits.
 */
final class ChartSetter {
  private static final double HATCH = 4;
  private static final double GAP = 5;
  private static final String USUAL = "000";

  private final TextLayout text;
  private final Chart chart;
  private final Rectangle plotAtTop;
  private final ChartKey key;
  private final BandLabels bands;

  /** What the x axis measures, in as many lines as the plot is narrow. */
  private final List<TextLine> xLabel;

  ChartSetter(TextLayout text, Chart chart, double left, double width) {
    this.text = text;
    this.chart = chart;
    double first = widest(Chart.Tick::label, FontSize.BODY) + GAP;
    double across = width - first - widest(Chart.Tick::second, FontSize.SMALL) - GAP;
    this.plotAtTop = new Rectangle(left + first, 0, across, chart.heightPoints());
    this.key = new ChartKey(text, chart, left, width);
    this.bands = new BandLabels(text, chart.bands(), plot(0));
    String label = chart.x().label();
    this.xLabel =
        label.isBlank()
            ? List.of()
            : text.lines(FontSize.SMALL, Text.Style.MUTED, label, plotAtTop.width());
  }

  private double widest(Function<Chart.Tick, String> label, FontSize size) {
    Stream<String> labels = chart.y().ticks().stream().map(label);
    return text.widest(size, Text.Style.PLAIN, Stream.concat(Stream.of(USUAL), labels));
  }

  private Plot plot(double top) {
    Rectangle area = new Rectangle(plotAtTop.left(), top, plotAtTop.width(), chart.heightPoints());
    return new Plot(area, chart.x(), chart.y());
  }

  static void set(Flow flow, Chart chart) throws IOException {
    Rectangle frame = flow.frame;
    if (!chart.caption().isBlank()) {
      TextSetter.caption(flow, flow.root.child("P"), chart.caption());
    }
    ChartSetter setter = new ChartSetter(flow.text, chart, frame.left(), frame.width());
    Element figure = flow.root.child("Figure").alternative(chart.alternative());
    Pen.Drawing drawing =
        (pen, top) -> {
          double foot = pen.fromBottom(top + setter.height());
          figure.box(frame.left(), foot, frame.right(), foot + setter.height());
          setter.draw(pen.as(figure), top);
        };
    flow.add(chart.caption().isBlank() ? 12 : 3, setter.height(), false, drawing);
  }

  double height() {
    boolean second = chart.x().ticks().stream().anyMatch(tick -> !tick.second().isBlank());
    double ticks = FontSize.BODY.leading + (second ? FontSize.SMALL.leading : 0) + 3;
    double label = xLabel.isEmpty() ? 0 : TextLine.height(xLabel) + 1;
    return key.height() + bands.height() + chart.heightPoints() + ticks + label;
  }

  void draw(Pen pen, double top) throws IOException {
    Plot plot = plot(top + key.height() + bands.height());
    Rectangle area = plot.area();
    key.draw(pen, top);
    drawBands(pen, plot);
    bands.draw(pen, area.top());
    new ChartAxes(text, plot).draw(pen);
    double y = top + height() - TextLine.height(xLabel);
    for (TextLine line : xLabel) {
      pen.line(area.left() + (area.width() - line.width()) / 2, y, line);
      y += FontSize.SMALL.leading;
    }
    for (Chart.Guide guide : chart.guides()) {
      double at = plot.y(guide.at());
      pen.stroke(Color.BLACK, 0.5, Pen.Dash.LIMIT, Plot.line(area.left(), at, area.right(), at));
    }
    new ChartLabels(text, chart, plot, drawCurves(pen, plot)).draw(pen);
  }

  private List<List<Chart.Point>> drawCurves(Pen pen, Plot plot) throws IOException {
    List<List<Chart.Point>> paths = new ArrayList<>();
    for (Chart.Curve curve : chart.curves()) {
      List<List<Chart.Point>> stretches = curve.stretches().stream().map(plot::path).toList();
      List<List<Chart.Point>> bridges = bridges(curve, plot);
      paths.addAll(stretches);
      paths.addAll(bridges);
      pen.clip(plot.area());
      for (List<Chart.Point> path : bridges) {
        pen.stroke(Color.GREY, 0.5, Pen.Dash.BRIDGE, path);
      }
      for (List<Chart.Point> path : stretches) {
        ChartKey.draw(pen, curve.stroke(), path);
      }
      pen.unclip();
    }
    return paths;
  }

  /** From the last point before each break to the first one after it. */
  private static List<List<Chart.Point>> bridges(Chart.Curve curve, Plot plot) {
    List<List<Chart.Point>> bridges = new ArrayList<>();
    for (int i = 1; i < curve.stretches().size(); i++) {
      List<Chart.Point> before = curve.stretches().get(i - 1);
      Chart.Point from = plot.place(before.get(before.size() - 1));
      bridges.add(List.of(from, plot.place(curve.stretches().get(i).get(0))));
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
      Rectangle area = plot.area(outer.get(i));
      pen.fill(i % 2 == 0 ? Color.SHADE : Color.WHITE, area);
      drawSides(pen, Color.HAIR, area);
    }
    for (Chart.Band band : inner) {
      hatch(pen, plot.area(band));
    }
  }

  private static boolean isWithin(Chart.Band band, Chart.Band other) {
    boolean narrower = band.to() - band.from() < other.to() - other.from();
    return narrower && other.from() <= band.from() && band.to() <= other.to();
  }

  private static void hatch(Pen pen, Rectangle area) throws IOException {
    pen.fill(Color.WHITE, area);
    pen.clip(area);
    for (double y = area.top(); y < area.bottom() + area.width(); y += HATCH) {
      pen.rule(Color.GREY, 0.3, area.left(), y, area.right(), y - area.width());
    }
    pen.unclip();
    drawSides(pen, Color.GREY, area);
  }

  private static void drawSides(Pen pen, Color color, Rectangle area) throws IOException {
    pen.hairline(color, area.left(), area.top(), area.left(), area.bottom());
    pen.hairline(color, area.right(), area.top(), area.right(), area.bottom());
  }

  /**
   * The labels of a chart's bands, in lanes above the plot: lane 0 lies on the plot. No label
   * covers another. From a higher lane a line leads down to the band where no lower label is in its
   * way.
   */
  private static final class BandLabels {
    private static final double GAP = 5;
    private static final double LANE = FontSize.SMALL.leading;

    private record Label(TextLine line, double left, double middle, int lane) {
      double right() {
        return left + line.width();
      }

      boolean covers(double x) {
        return left - 2 < x && x < right() + 2;
      }

      boolean clashes(Label other) {
        return lane == other.lane && left < other.right() + GAP && other.left < right() + GAP;
      }
    }

    private final List<Label> labels = new ArrayList<>();
    private final Plot plot;

    BandLabels(TextLayout text, List<Chart.Band> bands, Plot plot) {
      this.plot = plot;
      bands.stream()
          .filter(band -> !band.label().isBlank())
          .sorted(Comparator.comparingDouble(Chart.Band::from))
          .forEach(band -> add(text, band, plot.area()));
    }

    private void add(TextLayout text, Chart.Band band, Rectangle area) {
      TextLine line =
          text.lines(FontSize.SMALL, Text.Style.PLAIN, band.label(), area.width()).get(0);
      double from = Math.max(area.left(), plot.x(band.from()));
      double middle = (from + Math.min(area.right(), plot.x(band.to()))) / 2;
      double left = Math.max(area.left(), middle - line.width() / 2);
      left = Math.min(left, area.right() - line.width());
      int lane = 0;
      while (clashes(new Label(line, left, middle, lane))) {
        lane++;
      }
      labels.add(new Label(line, left, middle, lane));
    }

    private boolean clashes(Label label) {
      return labels.stream().anyMatch(label::clashes);
    }

    private boolean isFree(Label label) {
      return labels.stream()
          .noneMatch(other -> other.lane() < label.lane() && other.covers(label.middle()));
    }

    double height() {
      int lanes = labels.stream().mapToInt(label -> label.lane() + 1).max().orElse(0);
      return lanes == 0 ? 3 : lanes * LANE + 2;
    }

    /** Draws the labels above a plot whose upper edge is at {@code bottom}. */
    void draw(Pen pen, double bottom) throws IOException {
      for (Label label : labels) {
        double top = bottom - 1 - (label.lane() + 1) * LANE;
        if (label.lane() > 0 && isFree(label)) {
          pen.hairline(Color.GREY, label.middle(), top + LANE - 1, label.middle(), bottom);
        }
        pen.line(label.left(), top, label.line());
      }
    }
  }
}
