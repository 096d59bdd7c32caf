package org.flitchbook.pdf;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.flitchbook.document.Chart;
import org.flitchbook.document.Text;

/**
 * Draws the markers of a plot and finds a place for each label, clear of curves, limit lines,
 * markers and other labels. A limit line is never without its label: it stands on its line, at the
 * right where that is free, else further left, above the line or below it. The label of a marker
 * stands around it, and is left out where no place is free; the tables hold its value.
 */
final class ChartLabels {
  private static final FontSize SIZE = FontSize.SMALL;
  private static final double FORBIDDEN = 1e6;
  private static final double ON_CURVE = 60;
  private static final double ON_LIMIT = 25;

  private static final double STEP = 8;
  private static final double EDGE = 4;
  private static final double BELOW = 6;
  private static final double DISTANCE = 0.08;

  private static final double[] DISTANCES = {5, 12, 22, 34, 48, 66};
  private static final double[][] SIDES = {
    {1, -1}, {1, 0}, {1, 1}, {-1, -1}, {-1, 0}, {-1, 1}, {0, -1}, {0, 1}
  };
  private static final double NEAR = 8;

  private final TextLayout text;
  private final Chart chart;
  private final Plot plot;
  private final List<Path> curves;
  private final List<Rectangle> taken = new ArrayList<>();

  ChartLabels(TextLayout text, Chart chart, Plot plot, List<Path> curves) {
    this.text = text;
    this.chart = chart;
    this.plot = plot;
    this.curves = curves;
  }

  void draw(Pen pen, Element figure) throws IOException {
    List<Chart.Marker> fromLeft = new ArrayList<>();
    for (Chart.Marks marks : chart.marks()) {
      for (Chart.Marker marker : marks.points()) {
        double x = plot.x(marker.x());
        taken.add(ChartSymbols.draw(pen, figure, marks.shape(), x, plot.y(marker.y())));
        fromLeft.add(marker);
      }
    }
    List<Chart.Guide> fromTop = new ArrayList<>(chart.guides());
    fromTop.sort(Comparator.comparingDouble(Chart.Guide::at).reversed());
    for (Chart.Guide guide : fromTop) {
      label(pen, figure, guide);
    }
    fromLeft.sort(Comparator.comparingDouble(Chart.Marker::x));
    for (Chart.Marker marker : fromLeft) {
      if (!marker.label().isBlank()) {
        label(pen, figure, marker);
      }
    }
  }

  /** How bad a place for a label is; at {@link #FORBIDDEN} and above it must not be used. */
  private double cost(Rectangle place) {
    if (!plot.area().inset(1).holds(place) || taken.stream().anyMatch(place::meets)) {
      return FORBIDDEN;
    }
    boolean onCurve = curves.stream().anyMatch(curve -> curve.crosses(place));
    long onLimits =
        chart.guides().stream()
            .map(guide -> plot.y(guide.at()))
            .filter(y -> place.top() < y && y < place.bottom())
            .count();
    return (onCurve ? ON_CURVE : 0) + ON_LIMIT * onLimits;
  }

  private void label(Pen pen, Element figure, Chart.Guide guide) throws IOException {
    double measure = plot.width() - 2 * EDGE;
    TextLine line = text.lines(SIZE, Text.Style.STRONG, guide.label(), measure).get(0);
    Rectangle place = best(line.width() + 3, plot.y(guide.at()));
    taken.add(place);
    pen.fill(figure, Color.WHITE, place);
    pen.line(figure, SIZE, place.left() + 1.5, place.top() - 0.6, line);
  }

  private Rectangle best(double width, double line) {
    Rectangle best = place(width, line, plot.right() - EDGE, false);
    double least = Double.MAX_VALUE;
    for (double right = plot.right() - EDGE; right - width > plot.left(); right -= STEP) {
      for (boolean below : new boolean[] {false, true}) {
        Rectangle place = place(width, line, right, below);
        double far = DISTANCE * (plot.right() - right) + (below ? BELOW : 0);
        double cost = cost(place) + far;
        best = cost < least ? place : best;
        least = Math.min(least, cost);
      }
    }
    return best;
  }

  private static Rectangle place(double width, double line, double right, boolean below) {
    double tall = SIZE.leading - 1.2;
    return new Rectangle(right - width, below ? line + 0.7 : line - 0.7 - tall, width, tall);
  }

  private void label(Pen pen, Element figure, Chart.Marker marker) throws IOException {
    List<TextLine> lines = text.lines(SIZE, Text.Style.PLAIN, marker.label(), plot.width() / 2);
    double width = lines.stream().mapToDouble(TextLine::width).max().orElse(0) + 3;
    Candidate best = best(marker, width, lines.size() * SIZE.leading);
    if (best.cost() >= FORBIDDEN) {
      return;
    }
    Rectangle place = best.place();
    taken.add(place);
    if (best.distance() > NEAR) {
      lead(pen, figure, plot.x(marker.x()), plot.y(marker.y()), place);
    }
    pen.fill(
        figure,
        Color.WHITE,
        new Rectangle(place.left(), place.top() + 0.5, place.width(), place.height() - 1));
    pen.lines(figure, SIZE, place.left() + 1.5, place.top(), lines);
  }

  private record Candidate(Rectangle place, double distance, double cost) {}

  private Candidate best(Chart.Marker marker, double width, double height) {
    double x = plot.x(marker.x());
    double y = plot.y(marker.y());
    Candidate best = new Candidate(new Rectangle(x, y, width, height), 0, FORBIDDEN);
    for (double distance : DISTANCES) {
      for (double[] side : SIDES) {
        Rectangle place = beside(x, y, side, distance, width, height);
        double cost = cost(place) + distance;
        best = cost < best.cost() ? new Candidate(place, distance, cost) : best;
      }
    }
    return best;
  }

  private static Rectangle beside(
      double x, double y, double[] side, double distance, double width, double height) {
    double middleX = x + side[0] * (distance + width / 2);
    double across = side[0] == 0 || side[1] != 0 ? distance + height / 2 : 0;
    double middleY = y + side[1] * across;
    return new Rectangle(middleX - width / 2, middleY - height / 2, width, height);
  }

  /** A hairline from a marker to the nearest edge of a label that stands away from it. */
  private static void lead(Pen pen, Element figure, double x, double y, Rectangle place)
      throws IOException {
    double endX = Math.max(place.left(), Math.min(x, place.right()));
    double endY = Math.max(place.top(), Math.min(y, place.bottom()));
    pen.hairline(figure, Color.GREY, x, y, endX, endY);
  }
}
