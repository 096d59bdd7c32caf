package org.flitchbook.record;

import static org.flitchbook.message.Message.say;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.function.IntPredicate;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.flitchbook.document.Chart;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Level;
import org.flitchbook.measure.Unit;
import org.flitchbook.message.Message;
import org.flitchbook.sums.Shift;

/** A track on a chart: its curve, broken at each gap, and its points. */
record Drawn(Track track, Unit unit, TimeAxis time) {

  double x(int index) {
    return time.at(track.earliest(index));
  }

  double y(int index) {
    return Level.drawn(track.level(index, Shift.AS_WRITTEN), unit);
  }

  String shown(int index) {
    return Phrases.level(track, index, unit);
  }

  /** The values within the time of the chart. */
  DoubleStream seen() {
    return IntStream.range(0, track.size())
        .filter(i -> time.holds(track.earliest(i)))
        .mapToDouble(this::y);
  }

  Chart.Curve curve(String name, Chart.Stroke stroke) {
    return new Chart.Curve(name, stroke, stretches());
  }

  /** A reading by hand is marked, and joined to others only where no log was kept. */
  private List<List<Chart.Point>> stretches() {
    List<List<Chart.Point>> stretches = new ArrayList<>();
    List<Chart.Point> stretch = new ArrayList<>();
    for (int i = 0; i < track.size(); i++) {
      if (isOnCurve(i)) {
        stretch.add(new Chart.Point(x(i), y(i)));
      }
      if (track.interval() > 0 && track.gapAfter(i)) {
        end(stretch, stretches);
      }
    }
    end(stretch, stretches);
    return stretches;
  }

  private static void end(List<Chart.Point> stretch, List<List<Chart.Point>> stretches) {
    if (!stretch.isEmpty()) {
      stretches.add(List.copyOf(stretch));
      stretch.clear();
    }
  }

  private boolean isOnCurve(int index) {
    return track.interval() == 0 || !track.byHand(index);
  }

  /** The last reading up to a time; the first one where none is so early. */
  static int upTo(Track track, Instant time) {
    int index = 0;
    while (index + 1 < track.size() && track.earliest(index + 1) <= time.toEpochMilli()) {
      index++;
    }
    return index;
  }

  Chart.Marker marker(int index, String label) {
    return new Chart.Marker(x(index), y(index), label);
  }

  List<Chart.Marker> byHand(boolean labelled) {
    return markers(track::byHand, labelled);
  }

  private List<Chart.Marker> markers(IntPredicate wanted, boolean labelled) {
    return IntStream.range(0, track.size())
        .filter(wanted)
        .filter(i -> time.holds(track.earliest(i)))
        .mapToObj(i -> marker(i, labelled ? shown(i) : ""))
        .toList();
  }

  private String words(org.flitchbook.sums.Curve.Gap gap) {
    long from = track.earliest(gap.from());
    long to = track.earliest(gap.to());
    boolean leftOut =
        track.excluded().stream().anyMatch(each -> from < each.at() && each.at() < to);
    Phrases phrases = time.phrases();
    Message told =
        leftOut
            ? say(
                "record.chart.left-out-gap",
                "readings of {0} left out, {1} min",
                phrases.probe(track),
                (to - from) / 60_000)
            : say(
                "record.chart.gap",
                "no reading of {0}, {1} min",
                phrases.probe(track),
                (to - from) / 60_000);
    return phrases.bound().bound(phrases.say(told));
  }

  /** The readings that were left out; one beyond the axis stands at its end. */
  List<Chart.Marker> leftOut(Chart.Axis axis) {
    return track.excluded().stream()
        .filter(each -> time.holds(each.at()))
        .map(each -> new Chart.Marker(time.at(each.at()), within(axis, each.level()), ""))
        .toList();
  }

  private double within(Chart.Axis axis, long level) {
    return Math.max(axis.min(), Math.min(axis.max(), Level.drawn(level, unit)));
  }

  /** The silences of the log, each with its length in words. */
  List<Chart.Band> gaps() {
    List<Chart.Band> bands = new ArrayList<>();
    for (org.flitchbook.sums.Curve.Gap gap : track.gaps()) {
      if (time.from() < track.earliest(gap.to()) && track.earliest(gap.from()) < time.to()) {
        bands.add(new Chart.Band(x(gap.from()), x(gap.to()), words(gap)));
      }
    }
    return bands;
  }
}
