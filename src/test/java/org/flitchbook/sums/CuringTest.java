package org.flitchbook.sums;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.math.BigDecimal;
import java.util.List;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Unit;
import org.flitchbook.message.Language;
import org.flitchbook.practice.Practice;
import org.flitchbook.practice.ToolPractice;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What cures beside sodium nitrite, and what several sums come to together. */
final class CuringTest {

  private static Quantity q(String text) {
    return Quantity.required(text);
  }

  private static String text(Worked worked) {
    return worked.formula().in(Language.ENGLISH);
  }

  private static void rounded(String expected, Quantity found, String source) {
    BigDecimal like = new BigDecimal(expected);
    assertEquals(like, found.value().rounded(like.scale()), source);
  }

  /** By molar mass; tables of atomic weights agree to five decimals and no further (computed). */
  @ParameterizedTest(name = "{0}: {1}")
  @CsvSource({"KNO2 as NaNO2, 0.81072", "KNO3 as NaNO3, 0.84067", "NaNO2 as NO2, 0.66679"})
  void a_molar_factor_is_right_to_five_decimals(String factor, String five) {
    Quantity one = q("1 ppm");
    Quantity found =
        switch (factor) {
          case "KNO2 as NaNO2" -> Sums.asSodiumNitrite(one);
          case "KNO3 as NaNO3" -> Sums.asSodiumNitrate(one);
          default -> Sums.asNitriteIon(Formula.of(one).as(Unit.PPM)).value();
        };
    rounded(five, found, "IUPAC 1995");
  }

  @ParameterizedTest(name = "{0}: {2} of {1}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          # id | as fed    | counts    | source
          T13  | 600 ppm   | 550 ppm   | 9 CFR 424.22(b)(1), hydrates scaled, 216 to 198 (derived)
          T13  | 601.2 ppm | 551.1 ppm | just above (derived)
          -    | 0.60 lb   | 0.55 lb   | the same by weight (derived)
          -    | 0 %       | 0 %       | none (derived)
          """)
  void a_hydrate_counts_as_the_salt_in_it(String id, String asFed, String counts, String source) {
    assertEquals(q(counts), Sums.asAnhydrousAccelerator(q(asFed)), source);
  }

  /** T17: 9 CFR 424.21(c) has nitrate for cured meat other than bacon (read). */
  @ParameterizedTest(name = "{0} of nitrate in the mix: {1}")
  @CsvSource({"0 %, false", "0.0001 %, true", "4 %, true"})
  void any_nitrate_in_bacon_is_above_none(String share, boolean above) {
    Worked worked =
        Sums.ingoingDry(List.of(new Dose(q("11.5 g"), q(share))), Base.skinFree(q("4812 g")));
    assertEquals(above, worked.value().isAbove(q("0 ppm")), "T17 (derived)");
  }

  /** Pumped to 80 ppm (limit 120), then rubbed (limit 200): against the stricter (memory, low). */
  @ParameterizedTest(name = "rubbed with {0}: {1} ppm")
  @CsvSource({"6.3 g, 119.375, false", "6.4 g, 120, false", "6.5 g, 120.625, true"})
  void two_ways_on_one_piece_add_up_against_the_stricter_limit(
      String rubbed, String ppm, boolean above) {
    Worked pump =
        Sums.ingoingTakenUp(
            List.of(new Dose(q("1.28 lb"), q("6.25 %"))),
            q("100 lb"),
            q("10 %"),
            Base.skinFree(q("20 kg")));
    Worked rub =
        Sums.ingoingDry(List.of(new Dose(q(rubbed), q("6.25 %"))), Base.skinFree(q("10 kg")));
    Worked both = Sums.added(List.of(pump, rub));
    assertEquals(q(ppm + " ppm"), both.value(), "FSIS Directive 7620.3 p. 33, unverified");
    assertEquals(above, both.value().isAbove(q("120 ppm")), "the stricter of 120 and 200 ppm");
    assertFalse(both.value().isAbove(q("200 ppm")));
    assertEquals(text(pump) + " + " + text(rub), text(both));
    assertEquals(pump, Sums.added(List.of(pump)), "one way alone is itself");
  }

  /** By pencil: 97.5 + 11.5 × 0.9375 = 108.28125 g of salt. */
  @Test
  void salt_is_plain_salt_and_the_salt_of_the_cure() {
    Worked salt =
        Sums.inPercent(
            Sums.ingoingDry(
                List.of(new Dose(q("97.5 g"), q("100 %")), new Dose(q("11.5 g"), q("93.75 %"))),
                Base.skinFree(q("4812 g"))));
    rounded("2.25023", salt.value(), "derived");
    assertEquals(Unit.PERCENT, salt.value().unit());
    assertEquals("(97.5 g × 100 % + 11.5 g × 93.75 %) / 4812 g × 100", text(salt));
  }

  @ParameterizedTest(name = "{0} of {1}, {2}, {3}, {4}: {5} g")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          # last | packed | ends   | waste | samples | unexplained | of the last
          4222 g | 3900 g | 310 g  | 12 g  | 0 g     | 0   | 0.000
          4222 g | 3900 g | 300 g  | 12 g  | 5 g     | 5   | 0.118
          4222 g | 3.9 kg | 0 g    | 0 g   | 0 g     | 322 | 7.627
          4222 g | 4000 g | 310 g  | 0 g   | 0 g     | -88 | -2.084
          """)
  void what_a_lot_weighed_last_went_somewhere(
      String last,
      String packed,
      String ends,
      String waste,
      String samples,
      String unexplained,
      String share) {
    MassBalance balance = new MassBalance(q(last), q(packed), q(ends), q(waste), q(samples));
    assertEquals(q(unexplained + " g"), balance.unexplained().value());
    rounded(share, balance.unexplainedShare().value(), "by pencil");
  }

  @Test
  void a_balance_is_written_out() {
    MassBalance balance =
        new MassBalance(q("4222 g"), q("3900 g"), q("300 g"), q("12 g"), q("5 g"));
    String sum = "4222 g − 3900 g packed − 300 g ends − 12 g waste − 5 g samples";
    assertEquals(sum, text(balance.unexplained()));
    assertEquals("(" + sum + ") / 4222 g × 100", text(balance.unexplainedShare()));
  }

  @ParameterizedTest
  @CsvSource({"0 g, 1 g", "-1 g, 1 g", "1 g, -1 g", "1 g, 1 %", "1 h, 1 g"})
  void a_balance_of_nothing_is_refused(String last, String packed) {
    assertThrows(
        IllegalArgumentException.class,
        () -> new MassBalance(q(last), q(packed), q("0 g"), q("0 g"), q("0 g")));
  }

  /** The weights of lot 26047-B1 of the demo book. */
  @Test
  void the_yields_of_the_steps_multiply_to_the_yield_of_all() {
    Yields yields =
        Yields.of(
            List.of(q("4812 g"), q("4640 g"), q("4686 g"), q("4611 g"), q("4196 g"), q("4222 g")));
    List<String> steps = yields.steps().stream().map(step -> step.value().shown()).toList();
    assertEquals(List.of("96.426 %", "100.991 %", "98.399 %", "91 %", "100.62 %"), steps);
    rounded("87.739", yields.total().value(), "by pencil");
    assertEquals("4222 g / 4812 g × 100", text(yields.total()));
    assertEquals(
        yields.total().value().inBase(),
        yields.steps().stream()
            .map(step -> step.value().inBase())
            .reduce(org.flitchbook.measure.Ratio.ONE, org.flitchbook.measure.Ratio::times));
  }

  @Test
  void weights_without_a_step_are_refused() {
    assertThrows(IllegalArgumentException.class, () -> Yields.of(List.of(q("1 g"))));
    assertThrows(IllegalArgumentException.class, () -> Yields.of(List.of(q("1 g"), q("0 g"))));
    assertEquals(1, Yields.of(List.of(q("2 g"), q("1 g"))).steps().size(), "two are one step");
  }

  /** In 5 lb of meat (computed elsewhere): a spoon means anything from 116 to 196 ppm. */
  @Test
  void spoons_leave_a_spread_that_no_limit_survives() {
    Practice.Teaspoon spoon = ToolPractice.get().teaspoon();
    Base base = Base.skinFree(q("5 lb"));
    rounded(
        "116",
        Sums.ingoingDry(List.of(new Dose(spoon.from(), q("6.25 %"))), base).value(),
        "least");
    rounded(
        "196", Sums.ingoingDry(List.of(new Dose(spoon.to(), q("6.25 %"))), base).value(), "most");
  }
}
