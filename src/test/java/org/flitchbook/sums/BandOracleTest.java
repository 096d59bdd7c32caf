package org.flitchbook.sums;

import static org.flitchbook.sums.Line.MINUTE;
import static org.flitchbook.sums.Line.fahrenheit;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.flitchbook.SeededRun;
import org.flitchbook.sums.BandTime.State;
import org.junit.jupiter.api.Test;

/** Curves that are known at every moment, read as a logger reads them: now and then. */
final class BandOracleTest {

  private static final long SEED = 5013;
  private static final int CURVES = SeededRun.cases("Curves through a band", SEED, 5_000);

  /** Readings at an interval, now and then one late or missing, with so many gaps. */
  private static Line read(TrueCurve curve, long interval, int gaps, SplittableRandom random) {
    List<long[]> blind = new ArrayList<>();
    for (int i = 0; i < gaps; i++) {
      long from = random.nextLong(curve.end());
      blind.add(new long[] {from, from + random.nextLong(5 * MINUTE, 180 * MINUTE)});
    }
    List<Line.Point> points = new ArrayList<>();
    long at = -random.nextLong(interval);
    while (at < curve.end() + interval) {
      long time = Math.max(0, at);
      if (blind.stream().noneMatch(gap -> time > gap[0] && time < gap[1])) {
        points.add(new Line.Point(time, curve.at(time), false));
      }
      at += interval * random.nextInt(1, 4);
    }
    points.add(new Line.Point(curve.end() + 4 * interval, curve.at(curve.end()), false));
    return new Line(points, interval, 0);
  }

  private static long interval(SplittableRandom random) {
    return random.nextLong(1_000, 20 * MINUTE);
  }

  private static String message(int round, TrueCurve curve, Line line, Object found) {
    return "seed " + SEED + ", curve " + round + ": " + found + " of " + curve + " as " + line;
  }

  @Test
  void a_fall_never_took_longer_than_the_readings_count() {
    SplittableRandom random = new SplittableRandom(SEED);
    int done = 0;
    for (int i = 0; i < CURVES; i++) {
      long interval = interval(random);
      boolean gaps = i % 2 == 0;
      TrueCurve curve =
          gaps ? TrueCurve.single(random, 3 * interval) : TrueCurve.wandering(random, 3 * interval);
      Line line = read(curve, interval, gaps ? random.nextInt(5) : 0, random);
      long top = fahrenheit(Integer.toString(random.nextInt(90, 140)));
      long bottom = fahrenheit(Integer.toString(random.nextInt(46, 89)));
      BandTime time = BandTime.falling(line, Shift.AS_WRITTEN, top, bottom);
      if (time.state() == State.DONE && curve.reaches(top)) {
        done++;
        assertTrue(time.longest() >= curve.fall(top, bottom), message(i, curve, line, time));
      }
    }
    assertEquals(SeededRun.known(375, 3_549), done, "that fell through the band");
  }

  @Test
  void a_rise_never_took_longer_than_the_readings_count() {
    SplittableRandom random = new SplittableRandom(SEED + 1);
    int done = 0;
    for (int i = 0; i < CURVES; i++) {
      long interval = interval(random);
      boolean gaps = i % 2 == 0;
      TrueCurve curve =
          gaps ? TrueCurve.single(random, 3 * interval) : TrueCurve.wandering(random, 3 * interval);
      Line line = read(curve, interval, gaps ? random.nextInt(5) : 0, random);
      long bottom = fahrenheit(Integer.toString(random.nextInt(49, 80)));
      long top = fahrenheit(Integer.toString(random.nextInt(81, 140)));
      BandTime time = BandTime.rising(line, Shift.AS_WRITTEN, bottom, top);
      if (time.state() == State.DONE && curve.reaches(top)) {
        done++;
        assertTrue(time.longest() >= curve.rise(bottom, top), message(i, curve, line, time));
      }
    }
    assertEquals(SeededRun.known(373, 3_833), done, "that rose through the band");
  }

  /** What lies in a gap between two good readings is not counted; it is told beside. */
  @Test
  void no_more_time_was_spent_inside_than_was_counted_or_not_seen() {
    SplittableRandom random = new SplittableRandom(SEED + 2);
    int spent = 0;
    for (int i = 0; i < CURVES; i++) {
      long interval = interval(random);
      TrueCurve curve = TrueCurve.wandering(random, 3 * interval);
      boolean gaps = i % 2 == 0;
      Line line = read(curve, interval, gaps ? random.nextInt(1, 5) : 0, random);
      long bottom = fahrenheit(Integer.toString(random.nextInt(35, 90)));
      long top = i % 3 == 0 ? Long.MAX_VALUE : bottom + fahrenheit("82");
      Exposure time =
          i % 3 == 0
              ? Exposure.above(line, Shift.AS_WRITTEN, bottom)
              : Exposure.between(line, Shift.AS_WRITTEN, bottom, top);
      long all = time.longest() + time.unseen();
      assertTrue(all >= curve.within(bottom, top), message(i, curve, line, time));
      spent += curve.within(bottom, top) > 0 ? 1 : 0;
    }
    assertEquals(SeededRun.known(489, 4_919), spent, "that were inside");
  }

  /**
   * The false pass that this prevents: the log was silent while the meat was above 130 °F and began
   * to cool, and its highest reading is the first one after that.
   */
  @Test
  void a_peak_behind_a_gap_does_not_start_the_clock() {
    Line line = Line.every(10, "0:90 10:110 100:125 110:100 120:80");
    BandTime time = BandTime.falling(line, Shift.AS_WRITTEN, fahrenheit("130"), fahrenheit("80"));
    assertEquals(110 * MINUTE, time.longest());
    assertEquals(10 * MINUTE, time.shortest());
    assertEquals(20 * MINUTE, time.interpolated().orElseThrow());
    assertTrue(time.gap());
    assertEquals(1, time.start());
  }
}
