package org.flitchbook.pdf;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.flitchbook.document.Chart;
import org.flitchbook.document.Text;

/**
 * The labels of a chart's bands, in lanes above the plot: lane 0 lies on the plot. No label covers
 * another. From a higher lane a line leads down to the band where no lower label is in its way.
 */
final class BandLabels {
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
    TextLine line = text.lines(FontSize.SMALL, Text.Style.PLAIN, band.label(), area.width()).get(0);
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
