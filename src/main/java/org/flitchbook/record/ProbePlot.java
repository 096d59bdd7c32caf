package org.flitchbook.record;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.account.ProbeReadings;
import org.flitchbook.account.ProbeReadings.Gap;
import org.flitchbook.document.Chart;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Level;
import org.flitchbook.sums.Shift;

/** A probe's readings on a chart: the curve, broken at each gap, and its points. */
record ProbePlot(ProbeReadings readings, TimeAxis time) {

  static List<ProbePlot> all(List<ProbeReadings> readings, TimeAxis time) {
    return readings.stream().map(each -> new ProbePlot(each, time)).toList();
  }

  private Track track() {
    return readings.track();
  }

  private Instant at(int index) {
    return Instant.ofEpochMilli(track().earliest(index));
  }

  private double y(int index) {
    return Level.drawn(track().level(index, Shift.AS_WRITTEN), readings.unit());
  }

  /** The values within the time of the chart. */
  DoubleStream seen() {
    return indices().mapToDouble(this::y);
  }

  private IntStream indices() {
    return IntStream.range(0, track().size()).filter(i -> time.holds(at(i)));
  }

  /** A reading by hand is marked, and joined to others only where no log was kept. */
  Chart.Curve curve(String name, Chart.Stroke stroke) {
    List<List<Chart.Point>> stretches = new ArrayList<>(List.of(new ArrayList<>()));
    for (int i = 0; i < track().size(); i++) {
      if (!readings.isLog() || !track().byHand(i)) {
        stretches.get(stretches.size() - 1).add(new Chart.Point(time.at(at(i)), y(i)));
      }
      if (readings.isLog() && track().gapAfter(i)) {
        stretches.add(new ArrayList<>());
      }
    }
    stretches.removeIf(List::isEmpty);
    return new Chart.Curve(name, stroke, stretches);
  }

  /** The index of the last reading up to a time; of the first one where none is so early. */
  static int upTo(Track track, Instant time) {
    int index = 0;
    while (index + 1 < track.size() && track.earliest(index + 1) <= time.toEpochMilli()) {
      index++;
    }
    return index;
  }

  /** The readings by hand, each with its level where they are labelled. */
  static List<Chart.Marker> byHand(List<ProbePlot> plots, boolean labelled) {
    return plots.stream().flatMap(plot -> plot.byHand(labelled)).toList();
  }

  private Stream<Chart.Marker> byHand(boolean labelled) {
    return indices()
        .filter(track()::byHand)
        .mapToObj(readings::reading)
        .map(reading -> time.marker(reading, labelled ? Phrases.level(reading) : ""));
  }

  /** The readings that were left out; one beyond the axis stands at its end. */
  static List<Chart.Marker> leftOut(List<ProbePlot> plots, Chart.Axis axis) {
    return plots.stream().flatMap(plot -> plot.leftOut(axis)).toList();
  }

  private Stream<Chart.Marker> leftOut(Chart.Axis axis) {
    return track().excluded().stream()
        .filter(each -> time.holds(Instant.ofEpochMilli(each.at())))
        .map(each -> new Chart.Marker(time.at(Instant.ofEpochMilli(each.at())), y(each, axis), ""));
  }

  private double y(Track.Excluded reading, Chart.Axis axis) {
    double value = Level.drawn(reading.level(), readings.unit());
    return Math.max(axis.min(), Math.min(axis.max(), value));
  }

  /** The silences of the logs, each with its length in words. */
  static List<Chart.Band> gaps(List<ProbePlot> plots) {
    return plots.stream().flatMap(ProbePlot::gaps).toList();
  }

  private Stream<Chart.Band> gaps() {
    return readings.gaps().stream()
        .filter(gap -> time.from().isBefore(gap.until()) && gap.from().isBefore(time.to()))
        .map(gap -> new Chart.Band(time.at(gap.from()), time.at(gap.until()), words(gap)));
  }

  private String words(Gap gap) {
    Phrases phrases = time.phrases();
    String probe = phrases.probe(readings.probe());
    Object minutes = gap.length().value().floor();
    return phrases.unbroken(
        gap.leftOut()
            ? phrases.say(
                "record.chart.left-out-gap", "readings of {0} left out, {1} min", probe, minutes)
            : phrases.say("record.chart.gap", "no reading of {0}, {1} min", probe, minutes));
  }
}
