package org.flitchbook.record;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.flitchbook.document.Axis;
import org.flitchbook.document.Guide;
import org.flitchbook.document.Tick;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Unit;

/** The axis of what was measured, at round numbers; of a temperature in the other scale as well. */
record ValueAxis(Unit unit, double least, double most, Phrases phrases) {

  private static final int[] STEPS = {1, 2, 5, 10, 20, 50, 100};
  private static final int MOST_TICKS = 11;

  /** So that all values and limit lines are to be seen, with some room at both ends. */
  static ValueAxis over(Unit unit, double[] seen, List<Guide> guides, Phrases phrases) {
    DoubleSummaryStatistics all =
        DoubleStream.concat(Arrays.stream(seen), guides.stream().mapToDouble(Guide::at))
            .summaryStatistics();
    double room = Math.max(1, (all.getMax() - all.getMin()) / 5);
    return new ValueAxis(unit, all.getMin() - room, all.getMax() + room / 2, phrases);
  }

  Axis axis() {
    int step = step(least, most);
    int low = (int) Math.floor(least / step) * step;
    int high = (int) Math.ceil((most + step / 10.0) / step) * step;
    List<Tick> ticks = new ArrayList<>();
    IntStream.rangeClosed(low / step, high / step)
        .map(i -> i * step)
        .forEach(value -> ticks.add(new Tick(value, String.valueOf(value), "")));
    if (unit.dimension() == Dimension.TEMPERATURE) {
      ticks.addAll(others(low, high));
    }
    return new Axis(label(), low, high, ticks);
  }

  /** Those of the limit lines that the axis reaches. */
  List<Guide> within(List<Guide> guides) {
    Axis axis = axis();
    return guides.stream()
        .filter(each -> axis.min() <= each.at() && each.at() <= axis.max())
        .toList();
  }

  private String label() {
    return unit.dimension() == Dimension.TEMPERATURE
        ? phrases.say("record.chart.units", "{0}, at the right {1}", unit, other())
        : unit.symbol();
  }

  private static int step(double from, double to) {
    for (int step : STEPS) {
      if ((to - from) / step <= MOST_TICKS) {
        return step;
      }
    }
    return (int) Math.ceil((to - from) / MOST_TICKS);
  }

  private Unit other() {
    return unit == Unit.FAHRENHEIT ? Unit.CELSIUS : Unit.FAHRENHEIT;
  }

  private List<Tick> others(int low, int high) {
    int step = step(between(low, unit, other()), between(high, unit, other()));
    List<Tick> ticks = new ArrayList<>();
    int from = (int) Math.ceil(between(low, unit, other()) / step);
    for (int i = from; i * step <= between(high, unit, other()); i++) {
      double at = Math.min(high, Math.max(low, between(i * step, other(), unit)));
      ticks.add(new Tick(at, "", String.valueOf(i * step)));
    }
    return ticks;
  }

  private static double between(int value, Unit from, Unit to) {
    return Quantity.of(value, from).in(to).value().rounded(6).doubleValue();
  }
}
