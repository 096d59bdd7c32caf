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

  private final TextLayout text;
  private final Chart chart;
  private final double left;
  private final double width;
  private final double firstUnit;
  private final double secondUnit;
  final ChartKey key;
  final BandLabels bands;

  /** What the x axis measures, in as many lines as the plot is narrow. */
  final List<TextLine> xLabel;

  ChartLayout(TextLayout text, Chart chart, double left, double width) {
    this.text = text;
    this.chart = chart;
    this.left = left;
    this.width = width;
    this.firstUnit = widest(Chart.Tick::label, FontSize.BODY);
    this.secondUnit = widest(Chart.Tick::second, FontSize.SMALL);
    this.key = new ChartKey(text, chart, left, width);
    this.bands = new BandLabels(text, chart.bands(), plotAt(0));
    String label = chart.x().label();
    this.xLabel =
        label.isBlank()
            ? List.of()
            : text.lines(FontSize.SMALL, Text.Style.MUTED, label, plotAt(0).width());
  }

  private double widest(Function<Chart.Tick, String> label, FontSize size) {
    double usual = text.width(size, Text.Style.PLAIN, USUAL);
    List<Chart.Tick> ticks = chart.y().ticks();
    return ticks.stream()
        .mapToDouble(each -> text.width(size, Text.Style.PLAIN, label.apply(each)))
        .reduce(usual, Math::max);
  }

  /** The plot, in a chart whose upper edge is at {@code top}. */
  Plot plot(double top) {
    return plotAt(top + key.height() + bands.height());
  }

  private Plot plotAt(double plotTop) {
    double across = width - firstUnit - secondUnit - 2 * GAP;
    Rectangle area = new Rectangle(left + firstUnit + GAP, plotTop, across, chart.heightPoints());
    return new Plot(area, chart.x(), chart.y());
  }

  double height() {
    return key.height() + bands.height() + chart.heightPoints() + axisHeight();
  }

  private double axisHeight() {
    boolean second = chart.x().ticks().stream().anyMatch(tick -> !tick.second().isBlank());
    double labels = FontSize.BODY.leading + (second ? FontSize.SMALL.leading : 0) + 3;
    return labels + (xLabel.isEmpty() ? 0 : xLabel.size() * FontSize.SMALL.leading + 1);
  }
}
