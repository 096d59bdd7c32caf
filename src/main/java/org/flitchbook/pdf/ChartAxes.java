package org.flitchbook.pdf;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.flitchbook.document.Style;
import org.flitchbook.document.Tick;

/** Draws grid, axes and ticks. Where labels have no room, every second, third … is kept. */
final class ChartAxes {
  private static final double TICK = 3;
  private static final double GAP = 5;

  private final Setting setting;
  private final Plot plot;
  private final Element figure;

  ChartAxes(Setting setting, Plot plot, Element figure) {
    this.setting = setting;
    this.plot = plot;
    this.figure = figure;
  }

  void draw(Pen pen, double firstUnit) throws IOException {
    drawY(pen, firstUnit);
    drawX(pen);
    pen.hairline(figure, Ink.BLACK, plot.left(), plot.bottom(), plot.right(), plot.bottom());
    pen.hairline(figure, Ink.BLACK, plot.left(), plot.top(), plot.left(), plot.bottom());
  }

  private void drawY(Pen pen, double firstUnit) throws IOException {
    List<Tick> ticks = plot.yAxis().ticks();
    int step = step(ticks.size(), (a, b) -> apart(ticks.get(a), ticks.get(b)));
    for (int i = 0; i < ticks.size(); i++) {
      double y = plot.y(ticks.get(i).at());
      pen.hairline(figure, Ink.GRID, plot.left(), y, plot.right(), y);
      pen.hairline(figure, Ink.BLACK, plot.left() - TICK, y, plot.left(), y);
      if (i % step == 0) {
        double edge = plot.left() - GAP;
        label(pen, Type.BODY, Style.PLAIN, ticks.get(i).label(), edge, y);
        label(pen, Type.SMALL, Style.MUTED, ticks.get(i).second(), edge - firstUnit - GAP, y);
      }
    }
  }

  private boolean apart(Tick one, Tick other) {
    return Math.abs(plot.y(one.at()) - plot.y(other.at())) >= Type.SMALL.leading;
  }

  /** A label that ends at {@code right}, centred on {@code y}. */
  private void label(Pen pen, Type type, Style style, String text, double right, double y)
      throws IOException {
    Line line = line(type, style, text);
    pen.line(figure, type, right - line.width(), y - type.leading / 2, line);
  }

  private void drawX(Pen pen) throws IOException {
    List<Tick> ticks = plot.xAxis().ticks();
    List<Box> places = new ArrayList<>();
    ticks.forEach(tick -> places.add(place(tick)));
    int step = step(ticks.size(), (a, b) -> !places.get(a).meets(places.get(b)));
    for (int i = 0; i < ticks.size(); i++) {
      double x = plot.x(ticks.get(i).at());
      pen.hairline(figure, Ink.BLACK, x, plot.bottom(), x, plot.bottom() + TICK);
      if (i % step == 0) {
        double top = plot.bottom() + TICK;
        centred(pen, Type.BODY, Style.PLAIN, ticks.get(i).label(), x, top);
        top += Type.BODY.leading;
        centred(pen, Type.SMALL, Style.MUTED, ticks.get(i).second(), x, top);
      }
    }
    drawXLabel(pen);
  }

  private void drawXLabel(Pen pen) throws IOException {
    boolean second = plot.xAxis().ticks().stream().anyMatch(tick -> !tick.second().isBlank());
    double below = TICK + Type.BODY.leading + (second ? Type.SMALL.leading : 0) + 1;
    double middle = plot.left() + plot.width() / 2;
    centred(pen, Type.SMALL, Style.MUTED, plot.xAxis().label(), middle, plot.bottom() + below);
  }

  private Box place(Tick tick) {
    double first = line(Type.BODY, Style.PLAIN, tick.label()).width();
    double second = line(Type.SMALL, Style.MUTED, tick.second()).width();
    double width = Math.max(first, second) + GAP;
    return new Box(plot.x(tick.at()) - width / 2, 0, width, 1);
  }

  private void centred(Pen pen, Type type, Style style, String text, double x, double top)
      throws IOException {
    Line line = line(type, style, text);
    pen.line(figure, type, x - line.width() / 2, top, line);
  }

  private Line line(Type type, Style style, String text) {
    return setting.lines(type, style, text, Double.MAX_VALUE).get(0);
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
