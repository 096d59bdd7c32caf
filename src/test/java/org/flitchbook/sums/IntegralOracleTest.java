package org.flitchbook.sums;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.DoubleStream;
import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.integration.RombergIntegrator;
import org.apache.commons.math3.analysis.interpolation.LinearInterpolator;
import org.apache.commons.math3.analysis.polynomials.PolynomialSplineFunction;
import org.flitchbook.SeededRun;
import org.flitchbook.measure.Level;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Unit;
import org.flitchbook.sums.Lethality.Credit;
import org.flitchbook.sums.Lethality.Resistance;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The closed form against two ways of doing it the long way. */
final class IntegralOracleTest {

  private static final long SEED = 6570;
  private static final int CURVES = SeededRun.cases("Curves with a lethality", SEED, 10_000);
  private static final int STEPS = 400;

  /** A curve in minutes and °C with the law that it is judged by. */
  private record Drawn(List<Double> minutes, List<Double> degrees, double reference, double z) {

    static Drawn of(SplittableRandom random) {
      int size = random.nextInt(2, 8);
      List<Double> minutes = new ArrayList<>();
      List<Double> degrees = new ArrayList<>();
      double at = 0;
      double level = random.nextInt(200, 650) / 10.0;
      for (int i = 0; i < size; i++) {
        minutes.add(at);
        degrees.add(level);
        at += random.nextInt(1, 30);
        boolean flat = random.nextInt(6) == 0;
        level = Math.round(10 * level + (flat ? 0 : random.nextInt(-60, 90))) / 10.0;
      }
      return new Drawn(
          minutes, degrees, random.nextInt(500, 750) / 10.0, random.nextInt(40, 110) / 10.0);
    }

    Line line() {
      List<Line.Point> points = new ArrayList<>();
      for (int i = 0; i < minutes.size(); i++) {
        long level = Level.of(BigDecimal.valueOf(degrees.get(i)), Unit.CELSIUS).orElseThrow();
        points.add(new Line.Point(Math.round(minutes.get(i) * Line.MINUTE), level, false));
      }
      return new Line(points, 30 * Line.MINUTE, 0);
    }

    double closed() {
      return closedFrom("-200 °C");
    }

    double rate(double temperature) {
      return Math.pow(10, (temperature - reference) / z);
    }

    /** The rule of Simpson over fine steps of each straight line, cut where credit begins. */
    double fine(double lowest) {
      double sum = 0;
      for (int i = 0; i + 1 < minutes.size(); i++) {
        double from = degrees.get(i);
        double to = degrees.get(i + 1);
        double step = (minutes.get(i + 1) - minutes.get(i)) / STEPS;
        for (int k = 0; k < STEPS; k++) {
          double a = from + (to - from) * k / STEPS;
          double b = from + (to - from) * (k + 1) / STEPS;
          sum += step * piece(a, b, lowest);
        }
      }
      return sum;
    }

    private double piece(double a, double b, double lowest) {
      double low = Math.min(a, b);
      double high = Math.max(a, b);
      if (high < lowest) {
        return 0;
      }
      double counted = low >= lowest ? 1 : (high - lowest) / (high - low);
      double start = Math.max(low, lowest);
      return counted * (rate(start) + 4 * rate((start + high) / 2) + rate(high)) / 6;
    }

    double closedFrom(String lowest) {
      return Lethality.of(
              line(),
              Shift.AS_WRITTEN,
              new Resistance(
                  Quantity.of(BigDecimal.valueOf(reference), Unit.CELSIUS),
                  Quantity.of(1, Unit.MINUTE),
                  Quantity.of(BigDecimal.valueOf(z), Unit.CELSIUS)),
              new Credit(Quantity.required(lowest), false, BigDecimal.TEN))
          .minutes()
          .doubleValue();
    }
  }

  @Test
  void the_closed_form_is_what_curves_add_up_to_in_fine_steps() {
    SplittableRandom random = new SplittableRandom(SEED);
    int counted = 0;
    for (int i = 0; i < CURVES; i++) {
      Drawn drawn = Drawn.of(random);
      String message = "seed " + SEED + ", curve " + i + ": " + drawn.line();
      boolean cut = i % 2 == 1;
      double fine = drawn.fine(cut ? 54.4 : -200);
      double closed = cut ? drawn.closedFrom("54.4 °C") : drawn.closed();
      assertEquals(fine, closed, 1e-8 * Math.max(fine, 1e-9), message);
      counted += fine > 0 ? 1 : 0;
    }
    assertEquals(SeededRun.known(669, 6_853), counted, "curves that count at all");
  }

  /** Apache Commons Math: linear interpolation, and integration after Romberg line by line. */
  @Test
  void a_library_integrates_the_same_curves_to_a_millionth() {
    SplittableRandom random = new SplittableRandom(SEED + 1);
    for (int i = 0; i < 500; i++) {
      Drawn drawn = Drawn.of(random);
      PolynomialSplineFunction curve =
          new LinearInterpolator().interpolate(more(drawn.minutes(), 1), more(drawn.degrees(), 0));
      UnivariateFunction rate = at -> drawn.rate(curve.value(at));
      double sum = 0;
      for (int k = 0; k + 1 < drawn.minutes().size(); k++) {
        sum +=
            new RombergIntegrator(1e-10, 1e-14, 3, 30)
                .integrate(1_000_000, rate, drawn.minutes().get(k), drawn.minutes().get(k + 1));
      }
      assertEquals(
          sum,
          drawn.closed(),
          1e-6 * sum,
          "seed " + (SEED + 1) + ", curve " + i + ": " + drawn.line());
    }
  }

  /** The library wants three points; one more behind the last changes nothing before it. */
  private static double[] more(List<Double> values, double step) {
    double last = values.get(values.size() - 1) + step;
    return DoubleStream.concat(
            values.stream().mapToDouble(Double::doubleValue), DoubleStream.of(last))
        .toArray();
  }

  /** Where (e^x − 1) / x would lose its digits. */
  @ParameterizedTest
  @ValueSource(strings = {"60", "60.000000001", "60.0000001", "60.00001", "60.001", "60.1"})
  void a_line_that_hardly_climbs_is_nearly_a_hold(String top) {
    Line line = Line.celsius(10, "0:60 10:" + top);
    double f =
        Lethality.of(
                line,
                Shift.AS_WRITTEN,
                new Resistance(
                    Quantity.required("60 °C"),
                    Quantity.required("1 min"),
                    Quantity.required("10 °C")),
                new Credit(Quantity.required("0 °C"), false, BigDecimal.TEN))
            .minutes()
            .doubleValue();
    double rise = Math.log(10) * (Double.parseDouble(top) - 60) / 10;
    double series = 10 * (1 + rise / 2 * (1 + rise / 3 * (1 + rise / 4 * (1 + rise / 5))));
    assertEquals(series, f, 1e-9);
  }
}
