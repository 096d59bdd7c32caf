package org.flitchbook.pdf;

import java.util.List;
import java.util.function.Function;
import org.flitchbook.document.Chart;
import org.flitchbook.document.Text;

/**
 * How the parts of a chart share its width and height. Charts of the same width have their plots
 * below each other, as long as no label of a y axis is longer than three digits.
 */
final class ChartLayout {
  private static final double GAP = 5;
  private static final String USUAL = "000";

  private final Setting setting;
  private final Chart chart;
  private final double left;
  private final double width;
  private final double firstUnit;
  private final double secondUnit;
  private final ChartKey key;
  private final BandLabels bands;
  private final List<Line> xLabel;

  ChartLayout(Setting setting, Chart chart, double left, double width) {
    this.setting = setting;
    this.chart = chart;
    this.left = left;
    this.width = width;
    this.firstUnit = widest(Chart.Tick::label, Type.BODY);
    this.secondUnit = widest(Chart.Tick::second, Type.SMALL);
    this.key = new ChartKey(setting, chart, left, width);
    this.bands = new BandLabels(setting, chart.bands(), plotAt(0));
    String label = chart.x().label();
    this.xLabel =
        label.isBlank()
            ? List.of()
            : setting.lines(Type.SMALL, Text.Style.MUTED, label, plotAt(0).width());
  }

  private double widest(Function<Chart.Tick, String> label, Type type) {
    double usual = setting.width(type, Text.Style.PLAIN, USUAL);
    List<Chart.Tick> ticks = chart.y().ticks();
    return ticks.stream()
        .mapToDouble(each -> setting.width(type, Text.Style.PLAIN, label.apply(each)))
        .reduce(usual, Math::max);
  }

  /** The plot, in a chart whose upper edge is at {@code top}. */
  Plot plot(double top) {
    return plotAt(top + key.height() + bands.height());
  }

  private Plot plotAt(double plotTop) {
    double across = width - firstUnit - secondUnit - 2 * GAP;
    return new Plot(
        left + firstUnit + GAP, plotTop, across, chart.heightPoints(), chart.x(), chart.y());
  }

  double height() {
    return key.height() + bands.height() + chart.heightPoints() + axisHeight();
  }

  private double axisHeight() {
    boolean second = chart.x().ticks().stream().anyMatch(tick -> !tick.second().isBlank());
    double labels = Type.BODY.leading + (second ? Type.SMALL.leading : 0) + 3;
    return labels + (xLabel.isEmpty() ? 0 : xLabel.size() * Type.SMALL.leading + 1);
  }

  /** What the x axis measures, in as many lines as the plot is narrow. */
  List<Line> xLabel() {
    return xLabel;
  }

  ChartKey key() {
    return key;
  }

  BandLabels bands() {
    return bands;
  }
}
