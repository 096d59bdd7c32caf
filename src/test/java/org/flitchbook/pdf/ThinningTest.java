package org.flitchbook.pdf;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.document.Chart;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/** A long log is drawn with few points, none of them invented, and no peak is lost. */
class ThinningTest {
  /** A column of the plot, of which four points at most are drawn. */
  private static final double COLUMN = 0.4;

  private record Place(double x, double y) {}

  private record Reach(double low, double high) {
    Reach with(double y) {
      return new Reach(Math.min(low, y), Math.max(high, y));
    }
  }

  @TestFactory
  Stream<DynamicTest> logs_at_random_keep_their_ends_and_extremes() {
    return IntStream.range(0, 200)
        .mapToObj(seed -> DynamicTest.dynamicTest("seed " + seed, () -> check(new Random(seed))));
  }

  private static void check(Random random) {
    List<Chart.Point> log = log(random);
    Plot plot =
        new Plot(
            new Rectangle(
                random.nextInt(60),
                random.nextInt(200),
                100 + random.nextInt(400),
                60 + random.nextInt(200)),
            new Chart.Axis("", 0, log.get(log.size() - 1).x(), List.of()),
            new Chart.Axis("", -1000, 1000, List.of()));
    List<Place> drawn = plot.path(log).stream().map(s -> new Place(s.x(), s.y())).toList();
    List<Place> all = log.stream().map(p -> new Place(plot.x(p.x()), plot.y(p.y()))).toList();
    assertEquals(all.get(0), drawn.get(0));
    assertEquals(all.get(all.size() - 1), drawn.get(drawn.size() - 1));
    assertEquals(reach(all, plot), reach(drawn, plot), "a column has lost its lowest or highest");
    Set<Place> known = new HashSet<>(all);
    assertTrue(known.containsAll(drawn), "a point was invented");
    assertInOrder(drawn);
    assertTrue(drawn.size() <= 4 * (plot.area().width() / COLUMN + 2), drawn.size() + " points");
  }

  private static Map<Long, Reach> reach(List<Place> places, Plot plot) {
    Map<Long, Reach> reach = new TreeMap<>();
    for (Place each : places) {
      long column = (long) Math.floor((each.x() - plot.area().left()) / COLUMN);
      reach.merge(column, new Reach(each.y(), each.y()), (a, b) -> a.with(b.low()));
    }
    return reach;
  }

  private static void assertInOrder(List<Place> drawn) {
    for (int i = 1; i < drawn.size(); i++) {
      assertTrue(drawn.get(i - 1).x() <= drawn.get(i).x(), "the curve goes back at " + i);
    }
  }

  /** Up to 20,000 readings, with bursts, pauses, flat stretches and single spikes. */
  private static List<Chart.Point> log(Random random) {
    List<Chart.Point> points = new ArrayList<>();
    double x = 0;
    double y = 0;
    int size = 2 + random.nextInt(random.nextBoolean() ? 20 : 20_000);
    for (int i = 0; i < size; i++) {
      x += random.nextInt(10) == 0 ? random.nextDouble() * 100 : 1;
      y = random.nextInt(5) == 0 ? y : Math.max(-900, Math.min(900, y + random.nextGaussian() * 5));
      points.add(new Chart.Point(x, random.nextInt(300) == 0 ? 990 : y));
    }
    return points;
  }
}
