package org.flitchbook.pdf;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
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
  private final Element figure;

  ChartAxes(TextLayout text, Plot plot, Element figure) {
    this.text = text;
    this.plot = plot;
    this.figure = figure;
  }

  void draw(Pen pen, List<TextLine> xLabel) throws IOException {
    List<Chart.Tick> ticks = plot.yAxis().ticks();
    drawLeft(pen, ticks.stream().filter(tick -> !tick.label().isBlank()).toList());
    drawRight(pen, ticks.stream().filter(tick -> !tick.second().isBlank()).toList());
    drawX(pen);
    drawDays(pen);
    drawXLabel(pen, xLabel);
    pen.hairline(figure, Color.BLACK, plot.left(), plot.bottom(), plot.right(), plot.bottom());
    pen.hairline(figure, Color.BLACK, plot.left(), plot.top(), plot.left(), plot.bottom());
  }

  private void drawLeft(Pen pen, List<Chart.Tick> ticks) throws IOException {
    int step = step(ticks.size(), (a, b) -> apart(ticks.get(a), ticks.get(b)));
    for (int i = 0; i < ticks.size(); i++) {
      double y = plot.y(ticks.get(i).at());
      pen.hairline(figure, Color.GRID, plot.left(), y, plot.right(), y);
      pen.hairline(figure, Color.BLACK, plot.left() - TICK, y, plot.left(), y);
      if (i % step == 0) {
        TextLine line = line(FontSize.BODY, Text.Style.PLAIN, ticks.get(i).label());
        double x = plot.left() - GAP - line.width();
        pen.line(figure, FontSize.BODY, x, y - FontSize.BODY.leading / 2, line);
      }
    }
  }

  private void drawRight(Pen pen, List<Chart.Tick> ticks) throws IOException {
    int step = step(ticks.size(), (a, b) -> apart(ticks.get(a), ticks.get(b)));
    for (int i = 0; i < ticks.size(); i += step) {
      double y = plot.y(ticks.get(i).at());
      TextLine line = line(FontSize.SMALL, Text.Style.MUTED, ticks.get(i).second());
      pen.hairline(figure, Color.GREY, plot.right(), y, plot.right() + TICK, y);
      pen.line(figure, FontSize.SMALL, plot.right() + GAP, y - FontSize.SMALL.leading / 2, line);
    }
  }

  private boolean apart(Chart.Tick one, Chart.Tick other) {
    return Math.abs(plot.y(one.at()) - plot.y(other.at())) >= FontSize.SMALL.leading;
  }

  private void drawX(Pen pen) throws IOException {
    List<Chart.Tick> ticks = plot.xAxis().ticks();
    List<Rectangle> places = new ArrayList<>();
    ticks.forEach(tick -> places.add(place(tick)));
    int step = step(ticks.size(), (a, b) -> !places.get(a).meets(places.get(b)));
    for (int i = 0; i < ticks.size(); i++) {
      double x = plot.x(ticks.get(i).at());
      pen.hairline(figure, Color.BLACK, x, plot.bottom(), x, plot.bottom() + TICK);
      if (i % step == 0) {
        TextLine line = line(FontSize.BODY, Text.Style.PLAIN, ticks.get(i).label());
        pen.line(figure, FontSize.BODY, x - line.width() / 2, plot.bottom() + TICK, line);
      }
    }
  }

  /** The second labels, as many as have room, and their lines. */
  private void drawDays(Pen pen) throws IOException {
    List<Chart.Tick> days =
        plot.xAxis().ticks().stream().filter(tick -> !tick.second().isBlank()).toList();
    double top = plot.bottom() + TICK + FontSize.BODY.leading;
    double free = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < days.size(); i++) {
      double x = plot.x(days.get(i).at());
      if (i > 0) {
        pen.hairline(figure, Color.HAIR, x, plot.top(), x, plot.bottom());
      }
      TextLine label = line(FontSize.SMALL, Text.Style.MUTED, days.get(i).second());
      double left = Math.min(x - label.width() / 2, plot.right() + 3 * GAP - label.width());
      if (left >= free) {
        pen.line(figure, FontSize.SMALL, left, top, label);
        free = left + label.width() + GAP;
      }
    }
  }

  private void drawXLabel(Pen pen, List<TextLine> lines) throws IOException {
    boolean second = plot.xAxis().ticks().stream().anyMatch(tick -> !tick.second().isBlank());
    double top = plot.bottom() + TICK + FontSize.BODY.leading + 1;
    top += second ? FontSize.SMALL.leading : 0;
    for (TextLine line : lines) {
      double x = plot.left() + (plot.width() - line.width()) / 2;
      pen.line(figure, FontSize.SMALL, x, top, line);
      top += FontSize.SMALL.leading;
    }
  }

  private Rectangle place(Chart.Tick tick) {
    double width = line(FontSize.BODY, Text.Style.PLAIN, tick.label()).width() + GAP;
    return new Rectangle(plot.x(tick.at()) - width / 2, 0, width, 1);
  }

  private TextLine line(FontSize size, Text.Style style, String label) {
    return text.lines(size, style, label, Double.MAX_VALUE).get(0);
  }

  private interface Apart {
    boolean test(int one, int other);
  }

  /** The least step at which neighbours keep apart. */
  private static int step(int count, Apart apart) {
    for (int step = 1; step < count; step++) {
      boolean all = true;
      for (int i = 0; i + step < count; i += step) {
        all &= apart.test(i, i + step);
      }
      if (all) {
        return step;
      }
    }
    return Math.max(1, count);
  }
}
