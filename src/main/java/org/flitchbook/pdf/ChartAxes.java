package org.flitchbook.pdf;

import java.io.IOException;
import java.util.List;
import java.util.function.BiPredicate;
import org.flitchbook.document.Chart;
import org.flitchbook.document.Text;

/**
 * Draws grid, axes and ticks: the first unit at the left, the second one small at the right. Where
 * labels have no room, every second, third … is kept. An x tick with a second label, such as a new
 * day, runs up through the plot; not the first one, which says what day the chart begins on.
 */
final class ChartAxes {
  private static final double TICK = 3;
  private static final double GAP = 5;

  private final TextLayout text;
  private final Plot plot;
  private final Rectangle area;

  ChartAxes(TextLayout text, Plot plot) {
    this.text = text;
    this.plot = plot;
    this.area = plot.area();
  }

  void draw(Pen pen) throws IOException {
    List<Chart.Tick> ticks = plot.yAxis().ticks();
    drawLeft(pen, ticks.stream().filter(tick -> !tick.label().isBlank()).toList());
    drawRight(pen, ticks.stream().filter(tick -> !tick.second().isBlank()).toList());
    drawX(pen, plot.xAxis().ticks());
    drawDays(pen);
    pen.hairline(Color.BLACK, area.left(), area.bottom(), area.right(), area.bottom());
    pen.hairline(Color.BLACK, area.left(), area.top(), area.left(), area.bottom());
  }

  private void drawLeft(Pen pen, List<Chart.Tick> ticks) throws IOException {
    int step = step(ticks, this::apart);
    for (int i = 0; i < ticks.size(); i++) {
      double y = plot.y(ticks.get(i).at());
      pen.hairline(Color.GRID, area.left(), y, area.right(), y);
      pen.hairline(Color.BLACK, area.left() - TICK, y, area.left(), y);
      if (i % step == 0) {
        TextLine line = text.line(FontSize.BODY, Text.Style.PLAIN, ticks.get(i).label());
        pen.line(area.left() - GAP - line.width(), y - line.size().leading / 2, line);
      }
    }
  }

  private void drawRight(Pen pen, List<Chart.Tick> ticks) throws IOException {
    int step = step(ticks, this::apart);
    for (int i = 0; i < ticks.size(); i += step) {
      double y = plot.y(ticks.get(i).at());
      TextLine line = text.line(FontSize.SMALL, Text.Style.MUTED, ticks.get(i).second());
      pen.hairline(Color.GREY, area.right(), y, area.right() + TICK, y);
      pen.line(area.right() + GAP, y - line.size().leading / 2, line);
    }
  }

  private boolean apart(Chart.Tick one, Chart.Tick other) {
    return Math.abs(plot.y(one.at()) - plot.y(other.at())) >= FontSize.SMALL.leading;
  }

  private void drawX(Pen pen, List<Chart.Tick> ticks) throws IOException {
    int step = step(ticks, (one, other) -> !across(one).meets(across(other)));
    for (int i = 0; i < ticks.size(); i++) {
      double x = plot.x(ticks.get(i).at());
      pen.hairline(Color.BLACK, x, area.bottom(), x, area.bottom() + TICK);
      if (i % step == 0) {
        TextLine line = text.line(FontSize.BODY, Text.Style.PLAIN, ticks.get(i).label());
        pen.line(x - line.width() / 2, area.bottom() + TICK, line);
      }
    }
  }

  private Rectangle across(Chart.Tick tick) {
    double width = text.width(FontSize.BODY, Text.Style.PLAIN, tick.label()) + GAP;
    return new Rectangle(plot.x(tick.at()) - width / 2, 0, width, 1);
  }

  /** The second labels, as many as have room, and their lines. */
  private void drawDays(Pen pen) throws IOException {
    List<Chart.Tick> days =
        plot.xAxis().ticks().stream().filter(tick -> !tick.second().isBlank()).toList();
    double free = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < days.size(); i++) {
      double x = plot.x(days.get(i).at());
      if (i > 0) {
        pen.hairline(Color.HAIR, x, area.top(), x, area.bottom());
      }
      TextLine label = text.line(FontSize.SMALL, Text.Style.MUTED, days.get(i).second());
      double left = Math.min(x - label.width() / 2, area.right() + 3 * GAP - label.width());
      if (left >= free) {
        pen.line(left, area.bottom() + TICK + FontSize.BODY.leading, label);
        free = left + label.width() + GAP;
      }
    }
  }

  /** The least step at which neighbours keep apart. */
  private static int step(List<Chart.Tick> ticks, BiPredicate<Chart.Tick, Chart.Tick> apart) {
    for (int step = 1; step < ticks.size(); step++) {
      boolean all = true;
      for (int i = 0; i + step < ticks.size(); i += step) {
        all &= apart.test(ticks.get(i), ticks.get(i + step));
      }
      if (all) {
        return step;
      }
    }
    return Math.max(1, ticks.size());
  }
}
