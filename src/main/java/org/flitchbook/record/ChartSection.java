package org.flitchbook.record;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.account.ProbeReadings;
import org.flitchbook.account.ProbeReadings.Gap;
import org.flitchbook.account.ProbeReadings.Reading;
import org.flitchbook.check.Judgement;
import org.flitchbook.document.Chart;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Level;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Unit;
import org.flitchbook.sums.Shift;

/** A chart of a lot's readings over time: its axes, its curves, and what is marked on them. */
abstract class ChartSection extends LotSection {

  ChartSection(DayJudged day, Judgement judgement) {
    super(day, judgement);
  }

  /** The unit in which the records speak of temperatures. */
  final Unit temperature() {
    return day.plan().establishment().temperature();
  }

  /** The line of a limit in a chart; without a name its number stands alone. */
  final Chart.Guide guide(Quantity limit, String name) {
    return new Chart.Guide(
        unbroken((limit + " " + name).strip()),
        limit.in(temperature()).value().rounded(3).doubleValue());
  }

  final Chart.Marks byHand(Stream<Chart.Marker> points) {
    return new Chart.Marks(say(BY_HAND), Chart.Shape.DIAMOND, points.toList());
  }

  final Chart.Marks leftOut(Stream<ProbePlot> plots, Chart.Axis axis) {
    String name = say("record.chart.left-out", "left out");
    List<Chart.Marker> points = plots.flatMap(plot -> plot.leftOut(axis)).toList();
    return new Chart.Marks(name, Chart.Shape.RING, points);
  }

  /**
   * The time axis of a chart, in hours since its beginning: clock times, with the date under the
   * first of them and under each midnight; dates alone where it spans many days.
   */
  record TimeAxis(Instant from, Instant to, Phrases phrases) {

    private static final DateTimeFormatter DATE = DateTimeFormatter.ofPattern("MM-dd", Locale.ROOT);
    private static final double HOUR = 3_600_000.0;
    private static final int DAY = 24 * 60;
    private static final int MOST_TICKS = 12;

    /** Minutes between two ticks; up to a day they divide it. */
    private static final int[] STEPS = {5, 10, 15, 30, 60, 120, 180, 240, 360, 720, DAY, 2 * DAY};

    /** Empty where it would have no length. */
    static Optional<TimeAxis> of(Instant from, Instant to, Phrases phrases) {
      return to.isAfter(from) ? Optional.of(new TimeAxis(from, to, phrases)) : Optional.empty();
    }

    double at(Instant time) {
      return Duration.between(from, time).toMillis() / HOUR;
    }

    Chart.Marker marker(Reading reading, String label) {
      double y = reading.level().value().rounded(Level.DECIMALS).doubleValue();
      return new Chart.Marker(at(reading.at()), y, label);
    }

    boolean holds(Instant time) {
      return within(time).equals(time);
    }

    /** That time, or the end of the axis that it lies beyond. */
    Instant within(Instant time) {
      Instant notBefore = time.isBefore(from) ? from : time;
      return notBefore.isAfter(to) ? to : notBefore;
    }

    Chart.Axis axis() {
      String label = phrases.say("record.chart.clock", "Clock time, {0}", phrases.zone(from));
      return new Chart.Axis(label, 0, at(to), ticks());
    }

    private int step() {
      double minutes = at(to) * 60;
      return IntStream.of(STEPS)
          .filter(step -> minutes / step <= MOST_TICKS)
          .findFirst()
          .orElse((int) Math.ceil(minutes / (DAY * MOST_TICKS)) * DAY);
    }

    /** From the midnight before it, so that the ticks stand at full hours. */
    private List<Chart.Tick> ticks() {
      int step = step();
      List<Chart.Tick> ticks = new ArrayList<>();
      ZonedDateTime at = from.atZone(phrases.zone()).toLocalDate().atStartOfDay(phrases.zone());
      for (; !at.toInstant().isAfter(to); at = next(at, step)) {
        if (!at.toInstant().isBefore(from)) {
          String label = step < DAY ? phrases.clock(at.toInstant()) : DATE.format(at);
          ticks.add(new Chart.Tick(at(at.toInstant()), label, below(at, step, ticks.isEmpty())));
        }
      }
      return ticks;
    }

    /** By the clock, so that ticks stand at the same hours on the day that the clocks change. */
    private static ZonedDateTime next(ZonedDateTime at, int step) {
      return step < 60
          ? at.plus(Duration.ofMinutes(step))
          : at.plusDays(step / DAY).plusMinutes(step % DAY);
    }

    private static String below(ZonedDateTime at, int step, boolean first) {
      boolean midnight = at.toLocalTime().equals(LocalTime.MIDNIGHT);
      if (step < DAY) {
        return first || midnight ? at.toLocalDate().toString() : "";
      }
      return first ? String.valueOf(at.getYear()) : "";
    }
  }

  /** The axis of what was measured, at round numbers; of a temperature in the other scale, too. */
  record ValueAxis(Unit unit, double least, double most, Phrases phrases) {

    private static final int[] STEPS = {1, 2, 5, 10, 20, 50, 100};
    private static final int MOST_TICKS = 11;

    /** So that all values and limit lines are to be seen, with some room at both ends. */
    static ValueAxis over(Unit unit, double[] seen, List<Chart.Guide> guides, Phrases phrases) {
      DoubleSummaryStatistics all =
          DoubleStream.concat(Arrays.stream(seen), guides.stream().mapToDouble(Chart.Guide::at))
              .summaryStatistics();
      double room = Math.max(1, (all.getMax() - all.getMin()) / 5);
      return new ValueAxis(unit, all.getMin() - room, all.getMax() + room / 2, phrases);
    }

    Chart.Axis axis() {
      int step = step(least, most);
      int low = (int) Math.floor(least / step) * step;
      int high = (int) Math.ceil((most + step / 10.0) / step) * step;
      Stream<Chart.Tick> ticks =
          IntStream.iterate(low, value -> value <= high, value -> value + step)
              .mapToObj(value -> new Chart.Tick(value, String.valueOf(value), ""));
      if (unit.dimension() != Dimension.TEMPERATURE) {
        return new Chart.Axis(unit.symbol(), low, high, ticks.toList());
      }
      String label = phrases.say("record.chart.units", "{0}, at the right {1}", unit, other());
      return new Chart.Axis(label, low, high, Stream.concat(ticks, others(low, high)).toList());
    }

    private static int step(double from, double to) {
      return IntStream.of(STEPS)
          .filter(step -> (to - from) / step <= MOST_TICKS)
          .findFirst()
          .orElse((int) Math.ceil((to - from) / MOST_TICKS));
    }

    private Unit other() {
      return unit == Unit.FAHRENHEIT ? Unit.CELSIUS : Unit.FAHRENHEIT;
    }

    private Stream<Chart.Tick> others(int low, int high) {
      double least = converted(low, unit, other());
      double most = converted(high, unit, other());
      int step = step(least, most);
      return IntStream.iterate(
              (int) Math.ceil(least / step) * step, value -> value <= most, value -> value + step)
          .mapToObj(value -> other(value, low, high));
    }

    private Chart.Tick other(int value, int low, int high) {
      double at = Math.min(high, Math.max(low, converted(value, other(), unit)));
      return new Chart.Tick(at, "", String.valueOf(value));
    }

    private static double converted(int value, Unit from, Unit to) {
      return Quantity.of(value, from).in(to).value().rounded(6).doubleValue();
    }
  }

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
    Stream<Chart.Marker> byHand(boolean labelled) {
      return indices()
          .filter(track()::byHand)
          .mapToObj(readings::reading)
          .map(reading -> time.marker(reading, labelled ? Phrases.level(reading) : ""));
    }

    /** The readings that were left out; one beyond the axis stands at its end. */
    Stream<Chart.Marker> leftOut(Chart.Axis axis) {
      return track().excluded().stream()
          .filter(each -> time.holds(Instant.ofEpochMilli(each.at())))
          .map(
              each ->
                  new Chart.Marker(time.at(Instant.ofEpochMilli(each.at())), y(each, axis), ""));
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
}
