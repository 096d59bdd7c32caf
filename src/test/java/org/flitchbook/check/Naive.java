package org.flitchbook.check;

import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.NavigableMap;

/**
 * How a log is read by whoever believes every row: the highest number is the peak, and the cooling
 * runs on straight lines from the first time below a bound to the first time below the next.
 *
 * @param minutes of the readings, in order, and their levels in °F
 */
record Naive(List<Double> minutes, List<Double> levels) {

  static Naive of(NavigableMap<LocalTime, Double> readings) {
    Naive naive = new Naive(new ArrayList<>(), new ArrayList<>());
    readings.forEach((at, level) -> naive.add(at.toSecondOfDay() / 60.0, level));
    return naive;
  }

  void add(double minute, double level) {
    minutes.add(minute);
    levels.add(level);
  }

  double peak() {
    return levels.stream().mapToDouble(Double::doubleValue).max().orElse(0);
  }

  /** In minutes; from the peak where the top was never reached; infinite where it never ends. */
  double fall(double top, double bottom) {
    int peak = levels.indexOf(peak());
    return passed(peak, bottom) - (peak() < top ? minutes.get(peak) : passed(peak, top));
  }

  private double passed(int from, double level) {
    for (int i = from; i + 1 < levels.size(); i++) {
      if (levels.get(i) >= level && levels.get(i + 1) < level) {
        double part = (levels.get(i) - level) / (levels.get(i) - levels.get(i + 1));
        return minutes.get(i) + part * (minutes.get(i + 1) - minutes.get(i));
      }
    }
    return Double.POSITIVE_INFINITY;
  }

  /** By option 1 of the cooling: 130 to 80 °F in 90 minutes, 80 to 40 in 300. */
  boolean cools() {
    return fall(130, 80) <= 90 && fall(80, 40) <= 300;
  }

  /** The longest time at or above a level, in minutes. */
  double held(double level) {
    double longest = 0;
    int first = -1;
    for (int i = 0; i < levels.size(); i++) {
      first = levels.get(i) < level ? -1 : first < 0 ? i : first;
      longest = Math.max(longest, first < 0 ? 0 : minutes.get(i) - minutes.get(first));
    }
    return longest;
  }
}
