package org.flitchbook.sums;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.measure.Unit;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What scales and thermometers can show. */
final class ScalesTest {

  private static final long SEED = 45;
  private static final int DRAWS = 400_000;

  private static Quantity q(String text) {
    return Quantity.required(text);
  }

  /**
   * Published rows (computed elsewhere after the GUM and checked by Monte-Carlo) hold three parts:
   * the cure's weighing, the meat's, and a strength of 6.25 % known to 2 % (rectangular). The
   * strength is not part of this sum, so it is put in here, 156.25 ppm × 2 % / √3, before the row
   * is compared.
   */
  @ParameterizedTest(name = "{0} on a scale of {2}: u = {5} ppm")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          # meat   | cure     | its step | meat step | u of the cure | u of the row | k = 2 of the row
          1 kg     | 2.5 g    | 0.1 g    | 1 g       | 0.0645        | 4.42         | 8.8
          1 kg     | 2.5 g    | 1 g      | 1 g       | 0.645         | 40.4         | 81
          2.268 kg | 5.67 g   | 1 g      | 1 g       | 0.645         | 17.9         | 36
          5 kg     | 12.5 g   | 0.1 g    | 5 g       | 0.0645        | 1.98         | 4.0
          25 kg    | 62.5 g   | 1 g      | 20 g      | 0.645         | 2.42         | 4.8
          """)
  void the_weighings_of_a_published_row_are_what_its_strength_leaves(
      String meat,
      String cure,
      String step,
      String meatStep,
      double uCure,
      double uRow,
      double expandedRow) {
    Quantity result = q("156.25 ppm");
    double weighings =
        Sums.uncertainty(result, q(cure), q(step), q(meat), q(meatStep))
                .value()
                .rounded(6)
                .doubleValue()
            / 2;
    double strength = 156.25 * 0.02 / Math.sqrt(3);
    double all = Math.hypot(weighings, strength);
    // The sum is rounded to 0.1 before it is halved; the row to its last printed place.
    double printed = uRow > 10 ? 0.05 : 0.005;
    assertEquals(uRow, all, 0.025 + printed);
    assertEquals(expandedRow, 2 * all, 0.05 + (expandedRow > 30 ? 0.5 : 0.05));
    assertEquals(uCure, 0.645 * q(step).value().rounded(3).doubleValue(), 1e-9);
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
        Sums.uncertainty(result, q(cure), q(step), q(meat), q(meatStep))
            .value()
            .rounded(6)
            .doubleValue();
    double drawn = 2 * scatter(q(cure), q(step), q(meat), q(meatStep));
    assertEquals(drawn, expanded, 0.05 + 0.02 * drawn, "seed " + SEED + ", " + DRAWS + " draws");
  }

  private static double scatter(Quantity cure, Quantity step, Quantity meat, Quantity meatStep) {
    java.util.Random random = new java.util.Random(SEED);
    double sum = 0;
    double squares = 0;
    for (int i = 0; i < DRAWS; i++) {
      double ppm = weighed(random, cure, step) * 62_500 / weighed(random, meat, meatStep);
      sum += ppm;
      squares += ppm * ppm;
    }
    double mean = sum / DRAWS;
    return Math.sqrt(squares / DRAWS - mean * mean);
  }

  /** A tared weighing: two readings rounded to the step, and a repeatability of half a step. */
  private static double weighed(java.util.Random random, Quantity mass, Quantity step) {
    double width = step.inBase().rounded(6).doubleValue();
    double tare = (random.nextDouble() - 0.5) * width;
    double reading = (random.nextDouble() - 0.5) * width;
    return mass.inBase().rounded(6).doubleValue()
        + reading
        - tare
        + random.nextGaussian() * width / 2;
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
    assertEquals(table, degrees, 0.4 + 1e-9);
    assertEquals(atmosphere, degrees, 0.4 + 1e-9);
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
      Quantity less = Sums.uncertainty(ppm, cure, q(fine + " g"), meat, q("1 g"));
      Quantity more = Sums.uncertainty(ppm, cure, q(coarse + " g"), meat, q("1 g"));
      assertTrue(more.isAbove(less), "seed " + SEED + ", round " + i + ": " + cure + ", " + meat);
    }
  }
}
