package org.flitchbook.pdf;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
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
  private final List<List<Chart.Point>> curves;
  private final List<Rectangle> taken = new ArrayList<>();

  ChartLabels(TextLayout text, Chart chart, Plot plot, List<List<Chart.Point>> curves) {
    this.text = text;
    this.chart = chart;
    this.plot = plot;
    this.curves = curves;
  }

  void draw(Pen pen) throws IOException {
    List<Chart.Marker> markers = new ArrayList<>();
    for (Chart.Marks marks : chart.marks()) {
      for (Chart.Marker marker : marks.points()) {
        double x = plot.x(marker.x());
        taken.add(ChartKey.draw(pen, marks.shape(), x, plot.y(marker.y())));
        markers.add(marker);
      }
    }
    List<Chart.Guide> fromTop = new ArrayList<>(chart.guides());
    fromTop.sort(Comparator.comparingDouble(Chart.Guide::at).reversed());
    for (Chart.Guide guide : fromTop) {
      label(pen, guide);
    }
    markers.removeIf(marker -> marker.label().isBlank());
    markers.sort(Comparator.comparingDouble(Chart.Marker::x));
    for (Chart.Marker marker : markers) {
      label(pen, marker);
    }
  }

  /** How bad a place for a label is; at {@link #FORBIDDEN} and above it must not be used. */
  private double cost(Rectangle place) {
    if (!plot.area().holds(place, 1) || taken.stream().anyMatch(place::meets)) {
      return FORBIDDEN;
    }
    boolean onCurve = curves.stream().anyMatch(curve -> crosses(curve, place));
    long onLimits =
        chart.guides().stream()
            .map(guide -> plot.y(guide.at()))
            .filter(y -> place.top() < y && y < place.bottom())
            .count();
    return (onCurve ? ON_CURVE : 0) + ON_LIMIT * onLimits;
  }

  private static boolean crosses(List<Chart.Point> curve, Rectangle place) {
    return IntStream.range(1, curve.size())
        .anyMatch(i -> place.crossedBy(curve.get(i - 1), curve.get(i)));
  }

  private void label(Pen pen, Chart.Guide guide) throws IOException {
    double measure = plot.area().width() - 2 * EDGE;
    TextLine line = text.lines(SIZE, Text.Style.STRONG, guide.label(), measure).get(0);
    Rectangle place = best(line.width() + 3, plot.y(guide.at()));
    taken.add(place);
    pen.fill(Color.WHITE, place);
    pen.line(place.left() + 1.5, place.top() - 0.6, line);
  }

  private Rectangle best(double width, double line) {
    List<Candidate> places = new ArrayList<>();
    double last = plot.area().right() - EDGE;
    for (double right = last; right - width > plot.area().left(); right -= STEP) {
      double far = DISTANCE * (plot.area().right() - right);
      places.add(candidate(place(width, line, right, false), far));
      places.add(candidate(place(width, line, right, true), far + BELOW));
    }
    return best(places).map(Candidate::place).orElseGet(() -> place(width, line, last, false));
  }

  private static Rectangle place(double width, double line, double right, boolean below) {
    double tall = SIZE.leading - 1.2;
    return new Rectangle(right - width, below ? line + 0.7 : line - 0.7 - tall, width, tall);
  }

  private void label(Pen pen, Chart.Marker marker) throws IOException {
    List<TextLine> lines =
        text.lines(SIZE, Text.Style.PLAIN, marker.label(), plot.area().width() / 2);
    double width = lines.stream().mapToDouble(TextLine::width).max().orElse(0) + 3;
    double x = plot.x(marker.x());
    double y = plot.y(marker.y());
    Candidate best = best(around(x, y, width, TextLine.height(lines))).orElseThrow();
    if (best.cost() >= FORBIDDEN) {
      return;
    }
    Rectangle place = best.place();
    taken.add(place);
    if (best.distance() > NEAR) {
      lead(pen, x, y, place);
    }
    Rectangle ground =
        new Rectangle(place.left(), place.top() + 0.5, place.width(), place.height() - 1);
    pen.fill(Color.WHITE, ground);
    pen.lines(place.left() + 1.5, place.top(), lines);
  }

  private record Candidate(Rectangle place, double distance, double cost) {}

  private Candidate candidate(Rectangle place, double distance) {
    return new Candidate(place, distance, cost(place) + distance);
  }

  private static Optional<Candidate> best(List<Candidate> places) {
    return places.stream().min(Comparator.comparingDouble(Candidate::cost));
  }

  private List<Candidate> around(double x, double y, double width, double height) {
    List<Candidate> places = new ArrayList<>();
    for (double distance : DISTANCES) {
      for (double[] side : SIDES) {
        places.add(candidate(beside(x, y, side, distance, width, height), distance));
      }
    }
    return places;
  }

  private static Rectangle beside(
      double x, double y, double[] side, double distance, double width, double height) {
    double middleX = x + side[0] * (distance + width / 2);
    double across = side[0] == 0 || side[1] != 0 ? distance + height / 2 : 0;
    double middleY = y + side[1] * across;
    return new Rectangle(middleX - width / 2, middleY - height / 2, width, height);
  }

  /** A hairline from a marker to the nearest edge of a label that stands away from it. */
  private static void lead(Pen pen, double x, double y, Rectangle place) throws IOException {
    double endX = Math.max(place.left(), Math.min(x, place.right()));
    double endY = Math.max(place.top(), Math.min(y, place.bottom()));
    pen.hairline(Color.GREY, x, y, endX, endY);
  }
}
