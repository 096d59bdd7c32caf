package org.flitchbook.sums;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.measure.Unit;
import org.flitchbook.sums.Weighed.Weighing;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What scales and thermometers can show. */
final class ScalesTest {

  private static final long SEED = 45;
  private static final int DRAWS = 400_000;

  private static Quantity q(String text) {
    return Quantity.required(text);
  }

  private static Weighed alone(Weighing weighing) {
    return Weighed.NOTHING.and(weighing, Ratio.ONE);
  }

  private static Weighed alone(String mass, String step) {
    return alone(Weighing.of(q(mass), q(step)));
  }

  /** The standard uncertainty in g. */
  private static BigDecimal u(Weighing weighing) {
    return weighing.variance().rounded(24).sqrt(MathContext.DECIMAL64);
  }

  private static Quantity expanded(
      Quantity result, Quantity cure, String step, Quantity meat, String meatStep) {
    return Sums.uncertainty(
        result,
        alone(Weighing.of(cure, q(step))),
        alone(Weighing.of(meat, q(meatStep))),
        Optional.empty());
  }

  /**
   * Published rows, computed elsewhere after the GUM; the second was drawn 400,000 times and had a
   * standard deviation of 4.42. The cure is 6.25 %, known to 2 % of itself (rectangular). The first
   * row has a repeatability of a whole step, the others of half a step.
   */
  @ParameterizedTest(name = "{0} on a scale of {2}: u = {6} ppm")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          # meat   | cure    | its step | scatter | meat step | u of cure | u of row | k = 2 | 200 − 2u
          1 kg     | 2.5 g   | 0.01 g   | 0.01 g  | 1 g       | 0.0108    | 1.93     | 3.9   | 196.1
          1 kg     | 2.5 g   | 0.1 g    | 0.05 g  | 1 g       | 0.0645    | 4.42     | 8.8   | 191.2
          1 kg     | 2.5 g   | 1 g      | 0.5 g   | 1 g       | 0.645     | 40.4     | 81    | 119.2
          2.268 kg | 5.67 g  | 1 g      | 0.5 g   | 1 g       | 0.645     | 17.9     | 36    | 164.2
          5 kg     | 12.5 g  | 0.1 g    | 0.05 g  | 5 g       | 0.0645    | 1.98     | 4.0   | 196.0
          25 kg    | 62.5 g  | 1 g      | 0.5 g   | 20 g      | 0.645     | 2.42     | 4.8   | 195.2
          """)
  void a_published_row_is_found_again(
      String meat,
      String cure,
      String step,
      String scatter,
      String meatStep,
      BigDecimal uCure,
      BigDecimal uRow,
      BigDecimal expandedRow,
      BigDecimal acceptedTo) {
    Weighing weighed = new Weighing(q(cure), q(step), q(scatter));
    Quantity expanded =
        Sums.uncertainty(
            q("156.25 ppm"), alone(weighed), alone(meat, meatStep), Optional.of(q("2 %")));
    assertEquals(uCure, u(weighed).setScale(uCure.scale(), RoundingMode.HALF_EVEN));
    double found = expanded.value().rounded(1).doubleValue();
    assertEquals(expandedRow, expanded.value().rounded(expandedRow.scale()));
    // The expanded figure is rounded to 0.1, and the row to its last printed place.
    assertEquals(uRow.doubleValue(), found / 2, 0.025 + Math.pow(10, -uRow.scale()) / 2 + 1e-9);
    assertEquals(200 - acceptedTo.doubleValue(), found, 0.151);
  }

  /** Just inside, at and just outside of 200 ppm less and more U = 8.8 ppm. */
  @ParameterizedTest(name = "{0} ppm: {1}")
  @CsvSource({
    "191.1, false",
    "191.2, false",
    "191.3, true",
    "200, true",
    "208.7, true",
    "208.8, false",
    "208.9, false"
  })
  void within_u_of_a_limit_the_scales_cannot_tell(String value, boolean straddles) {
    assertEquals(
        straddles, Sums.inGuardBand(q(value + " ppm"), q("8.8 ppm"), q("200 ppm")), "derived");
  }

  /** FSIS-GD-2021-14 p. 20 (read): 165 °F with a probe of ± 1 °F asks for 166. */
  @ParameterizedTest
  @CsvSource({"166 °F, false", "165.9 °F, true", "165 °F, true", "164.1 °F, true", "164 °F, false"})
  void a_probe_is_trusted_beyond_its_accuracy(String value, boolean straddles) {
    assertEquals(straddles, Sums.inGuardBand(q(value), q("1 °F"), q("165 °F")));
    assertEquals(straddles, Sums.inGuardBand(q(value).in(Unit.CELSIUS), q("1 °F"), q("165 °F")));
  }

  @Test
  void without_uncertainty_nothing_is_in_the_guard_band() {
    assertFalse(Sums.inGuardBand(q("200 ppm"), q("0 ppm"), q("200 ppm")));
  }

  @Test
  void a_weighing_that_is_none_is_refused() {
    assertThrows(IllegalArgumentException.class, () -> Weighing.of(q("0 g"), q("1 g")));
    assertThrows(IllegalArgumentException.class, () -> Weighing.of(q("1 °C"), q("1 g")));
    assertThrows(IllegalArgumentException.class, () -> Weighing.of(q("1 g"), q("-1 g")));
    assertThrows(IllegalArgumentException.class, () -> Weighing.of(q("1 g"), q("1 %")));
    for (String wrong : List.of("-1 g", "1 %")) {
      assertThrows(
          IllegalArgumentException.class, () -> new Weighing(q("1 g"), q(wrong), q("1 g")));
      assertThrows(
          IllegalArgumentException.class, () -> new Weighing(q("1 g"), q("1 g"), q(wrong)));
    }
    assertEquals(Ratio.ZERO, new Weighing(q("1 g"), q("0 g"), q("0 g")).variance());
    Weighed one = alone("1 g", "0.1 g");
    assertThrows(
        IllegalArgumentException.class,
        () -> Sums.uncertainty(q("1 ppm"), one, one, Optional.of(q("-1 %"))));
  }

  /** Half a step of scatter: at least 22 steps for 3 %, 65 for 1 % (computed elsewhere). */
  @ParameterizedTest
  @CsvSource({"22, 0.03", "65, 0.01"})
  void a_scale_is_fit_for_so_many_of_its_steps(int steps, double relative) {
    double u = u(Weighing.of(q(steps + " g"), q("1 g"))).doubleValue();
    assertEquals(relative, u / steps, relative * 0.025);
  }

  /** Another way to the same number: draw each reading, each repeat and each tare. */
  @ParameterizedTest(name = "{0} of cure by {1} on {2} of meat by {3}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          # cure  | its step | meat   | its step
          2.5 g   | 0.1 g    | 1000 g | 1 g
          15.4 g  | 0.1 g    | 4812 g | 1 g
          12.5 g  | 0.01 g   | 5000 g | 20 g
          15.4 g  | 0.5 g    | 4812 g | 50 g
          """)
  void a_drawn_scatter_is_as_wide_as_the_sum(
      String cure, String step, String meat, String meatStep) {
    Quantity result =
        Sums.ingoingDry(java.util.List.of(new Dose(q(cure), q("6.25 %"))), Base.skinFree(q(meat)))
            .value();
    double expanded =
        expanded(result, q(cure), step, q(meat), meatStep).value().rounded(6).doubleValue();
    double drawn = 2 * scatter(q(cure), q(step), q(meat), q(meatStep));
    assertEquals(drawn, expanded, 0.05 + 0.02 * drawn, "seed " + SEED + ", " + DRAWS + " draws");
  }

  private static double scatter(Quantity cure, Quantity step, Quantity meat, Quantity meatStep) {
    java.util.Random random = new java.util.Random(SEED);
    double sum = 0;
    double squares = 0;
    double grams = inBase(cure);
    double width = inBase(step);
    double meatGrams = inBase(meat);
    double meatWidth = inBase(meatStep);
    for (int i = 0; i < DRAWS; i++) {
      double ppm = weighed(random, grams, width) * 62_500 / weighed(random, meatGrams, meatWidth);
      sum += ppm;
      squares += ppm * ppm;
    }
    double mean = sum / DRAWS;
    return Math.sqrt(squares / DRAWS - mean * mean);
  }

  /** A tared weighing: two readings rounded to the step, and a repeatability of half a step. */
  private static double weighed(java.util.Random random, double mass, double width) {
    double tare = (random.nextDouble() - 0.5) * width;
    double reading = (random.nextDouble() - 0.5) * width;
    return mass + reading - tare + random.nextGaussian() * width / 2;
  }

  private static double inBase(Quantity quantity) {
    return quantity.inBase().rounded(6).doubleValue();
  }

  /** Altitude tables; the last column is ISA pressure with the IAPWS equation (derived). */
  @ParameterizedTest(name = "{0} ft: {1} °F")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          # ft  | table °F (second-hand) | standard atmosphere °F (derived)
          0     | 212.0 | 212.0
          500   | 211.1 | 211.0
          1000  | 210.2 | 210.1
          2000  | 208.4 | 208.3
          2500  | 207.5 | 207.4
          3000  | 206.6 | 206.5
          3500  | 205.7 | 205.6
          4000  | 204.8 | 204.7
          4500  | 203.9 | 203.7
          5000  | 203.0 | 202.8
          5500  | 202.0 | 201.9
          6000  | 201.1 | 201.0
          6500  | 200.2 | 200.1
          7000  | 199.3 | 199.2
          7500  | 198.3 | 198.2
          8000  | 197.4 | 197.3
          8500  | 196.4 | 196.4
          9000  | 195.5 | 195.5
          9500  | 194.6 | 194.6
          10000 | 193.6 | 193.7
          """)
  void water_boils_lower_with_altitude(String feet, double table, double atmosphere) {
    Quantity boiling = Sums.boilingPoint(q(feet + " ft"));
    double degrees = boiling.value().rounded(4).doubleValue();
    assertEquals(Unit.FAHRENHEIT, boiling.unit());
    assertEquals(table, degrees, 0.3);
    assertEquals(atmosphere, degrees, 0.3);
  }

  /**
   * Between the rows and a little beyond: pressure of the ICAO standard atmosphere, and the
   * saturation line of IAPWS-IF97, region 4 (from memory; its three published values are held).
   */
  @Test
  void between_the_rows_water_boils_as_the_standard_atmosphere_has_it() {
    assertEquals(372.755919, saturation(0.1), 1e-6);
    assertEquals(453.035632, saturation(1), 1e-6);
    assertEquals(584.149488, saturation(10), 1e-6);
    for (int feet = -1_000; feet <= 11_000; feet += 100) {
      double pressure = 0.101325 * Math.pow(1 - 0.0065 * feet * 0.3048 / 288.15, 5.25588);
      double expected = saturation(pressure) * 1.8 - 459.67;
      double found = Sums.boilingPoint(q(feet + " ft")).value().rounded(4).doubleValue();
      assertEquals(expected, found, 0.3, feet + " ft");
    }
  }

  /** In K, from MPa. */
  private static double saturation(double pressure) {
    double beta = Math.pow(pressure, 0.25);
    double e = beta * beta - 17.073846940092 * beta + 14.915108613530;
    double f = 1167.0521452767 * beta * beta + 12020.824702470 * beta - 4823.2657361591;
    double g = -724213.16703206 * beta * beta - 3232555.0322333 * beta + 405113.40542057;
    double d = 2 * g / (-f - Math.sqrt(f * f - 4 * e * g));
    double sum = 650.17534844798 + d;
    return (sum - Math.sqrt(sum * sum - 4 * (-0.23855557567849 + 650.17534844798 * d))) / 2;
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          304.8 m | 210.2 °F
          310 ft  | 211.442 °F
          -100 ft | 212.18 °F
          """)
  void an_altitude_in_metres_or_below_the_sea_will_do(String altitude, String boiling) {
    assertEquals(q(boiling), Sums.boilingPoint(q(altitude)));
  }

  @ParameterizedTest
  @CsvSource({"0.1, 0.2", "0.2, 1", "1, 5"})
  void a_coarser_scale_proves_less(String fine, String coarse) {
    SplittableRandom random = new SplittableRandom(SEED);
    for (int i = 0; i < 500; i++) {
      Quantity cure = Quantity.of(random.nextLong(5, 50), Unit.GRAM);
      Quantity meat = Quantity.of(random.nextLong(1_000, 10_000), Unit.GRAM);
      Quantity ppm = new Quantity(Ratio.of(150), Unit.PPM);
      Quantity less = expanded(ppm, cure, fine + " g", meat, "1 g");
      Quantity more = expanded(ppm, cure, coarse + " g", meat, "1 g");
      assertTrue(more.isAbove(less), "seed " + SEED + ", round " + i + ": " + cure + ", " + meat);
    }
  }

  /**
   * By hand: u² = d²/6 + s² of each, (0.01²/6 + 0.005²) g² = 4.1667E-5 g². Two rubs of 5 g have the
   * variance of both; 5000 g less a rind of 1000 g, read to 1 g, that of both over 4000².
   */
  @Test
  void every_weighing_adds_its_doubt() {
    Weighing rub = Weighing.of(q("5 g"), q("0.01 g"));
    Weighing green = Weighing.of(q("5000 g"), q("1 g"));
    Weighing rind = Weighing.of(q("1000 g"), q("1 g"));
    Ratio strength = Ratio.of("0.0625");
    Weighed cure = Weighed.NOTHING.and(rub, strength).and(rub, strength);
    Weighed meat = Weighed.NOTHING.and(green, Ratio.ONE).and(rind, Ratio.ONE.negate());
    assertEquals("0.625", cure.net().toString());
    assertEquals("4000", meat.net().toString());
    // relative: 2 x 4.1667E-5 / 10² and 2 x 0.41667 / 4000², so U = 156.25 x 2 x 9.4E-4
    double relative = Math.sqrt(2 * (1e-4 / 6 + 2.5e-5) / 100 + 2 * (1.0 / 6 + 0.25) / 16e6);
    Quantity u = Sums.uncertainty(q("156.25 ppm"), cure, meat, Optional.empty());
    assertEquals(156.25 * 2 * relative, u.value().rounded(3).doubleValue(), 0.05);
    assertThrows(
        ArithmeticException.class,
        () -> Sums.uncertainty(q("1 ppm"), Weighed.NOTHING, meat, Optional.empty()));
  }
}
