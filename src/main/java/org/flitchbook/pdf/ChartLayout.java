package org.flitchbook.pdf;

import java.util.List;
import java.util.function.Function;
import org.flitchbook.document.Chart;
import org.flitchbook.document.Guide;
import org.flitchbook.document.Style;
import org.flitchbook.document.Tick;

/** How the parts of a chart share its width and height. */
final class ChartLayout {
  private static final double LABELS_SHARE = 0.24;
  private static final double GAP = 5;

  private final Setting setting;
  private final Chart chart;
  private final double left;
  private final double width;
  private final double firstUnit;
  private final double secondUnit;
  private final double guideLabels;
  private final ChartKey key;
  private final BandLabels bands;

  ChartLayout(Setting setting, Chart chart, double left, double width) {
    this.setting = setting;
    this.chart = chart;
    this.left = left;
    this.width = width;
    this.firstUnit = widest(chart.y().ticks(), Tick::label, Type.BODY);
    this.secondUnit = widest(chart.y().ticks(), Tick::second, Type.SMALL);
    this.guideLabels =
        Math.min(widest(chart.guides(), Guide::label, Type.BODY), width * LABELS_SHARE);
    this.key = new ChartKey(setting, chart, left, width);
    this.bands = new BandLabels(setting, chart.bands(), plotAt(0));
  }

  private <T> double widest(List<T> labelled, Function<T, String> label, Type type) {
    return labelled.stream()
        .mapToDouble(each -> setting.width(type, Style.PLAIN, label.apply(each)))
        .max()
        .orElse(0);
  }

  /** The plot, in a chart whose upper edge is at {@code top}. */
  Plot plot(double top) {
    return plotAt(top + key.height() + bands.height());
  }

  private Plot plotAt(double plotTop) {
    double before = firstUnit + GAP + (secondUnit > 0 ? secondUnit + GAP : 0);
    double after = guideLabels > 0 ? guideLabels + 2 * GAP : GAP;
    double across = width - before - after;
    return new Plot(left + before, plotTop, across, chart.heightPoints(), chart.x(), chart.y());
  }

  double height() {
    return key.height() + bands.height() + chart.heightPoints() + axisHeight();
  }

  private double axisHeight() {
    boolean second = chart.x().ticks().stream().anyMatch(tick -> !tick.second().isBlank());
    double labels = Type.BODY.leading + (second ? Type.SMALL.leading : 0) + 3;
    return labels + (chart.x().label().isBlank() ? 0 : Type.SMALL.leading + 1);
  }

  double guideLabels() {
    return guideLabels;
  }

  double firstUnit() {
    return firstUnit;
  }

  ChartKey key() {
    return key;
  }

  BandLabels bands() {
    return bands;
  }
}
