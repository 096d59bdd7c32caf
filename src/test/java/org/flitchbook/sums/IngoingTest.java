package org.flitchbook.sums;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.List;
import java.util.SplittableRandom;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.measure.Unit;
import org.flitchbook.message.Language;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The worked sums of others. Where a row says second-hand, the number was read in a quotation of
 * the handbook (FSIS Directive 7620.3) or in somebody's example, never in the handbook itself;
 * derived rows are arithmetic from a limit's own text.
 */
final class IngoingTest {

  private static final long SEED = 200;
  private static final Base SKIN_FREE = Base.skinFree(Quantity.required("10 kg"));

  private static Quantity q(String text) {
    return Quantity.required(text);
  }

  private static List<Dose> dose(String mass, String share) {
    return List.of(new Dose(q(mass), q(share)));
  }

  private static String rounded(Worked worked, String like) {
    assertEquals(Unit.PPM, worked.value().unit());
    return worked.value().value().rounded(new BigDecimal(like).scale()).toPlainString();
  }

  @ParameterizedTest(name = "{0}: {4} ppm")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          # id  | salt        | share    | meat      | ppm     | source
          E1    | 5 lb        | 0.40 %   | 100 lb    | 200.000 | a worked dry rub on bellies, stated as 200 ppm (second-hand)
          E5    | 0.70 g      | 6.25 %   | 454 g     | 96.366  | a worked dry rub, stated as 96 ppm (second-hand)
          E6    | 108 g       | 0.76 %   | 4086 g    | 200.88  | a worked belly of 9 lb, stated as 0.82 g and 200 ppm (second-hand)
          E7    | 0.25 g      | 6.25 %   | 100 g     | 156.25  | salt at 0.25 % of the meat, stated as 156 ppm (second-hand)
          T1    | 1 oz        | 100 %    | 100 lb    | 625     | 9 CFR 424.21(c), dry cure, 1 oz to 100 lb (derived)
          T2    | 0.25 oz     | 100 %    | 100 lb    | 156.25  | 9 CFR 424.21(c), chopped, 1/4 oz to 100 lb (derived)
          T3    | 4 oz        | 6.25 %   | 100 lb    | 156.25  | as T2 with a 6.25 % salt (derived)
          T3 lb | 0.25 lb     | 6.25 %   | 100 lb    | 156.25  | as T2 with a 6.25 % salt (derived)
          T4    | 32.0 g      | 6.25 %   | 10.000 kg | 200.00  | 9 CFR 424.22(b)(3), at the ceiling (derived)
          T5    | 32.1 g      | 6.25 %   | 10.000 kg | 200.625 | 9 CFR 424.22(b)(3), just above (derived)
          T10 s | 0.875 oz    | 100 %    | 100 lb    | 546.875 | 9 CFR 424.21(c), 7/8 oz of sodium erythorbate to 100 lb (derived)
          T10 a | 0.75 oz     | 100 %    | 100 lb    | 468.75  | 9 CFR 424.21(c), 3/4 oz of ascorbic acid to 100 lb (derived)
          T10 n | 3.5 oz      | 100 %    | 100 lb    | 2187.5  | 9 CFR 424.21(c), 3 1/2 oz of nitrate to 100 lb (derived)
          T10 c | 2.75 oz     | 100 %    | 100 lb    | 1718.75 | 9 CFR 424.21(c), 2 3/4 oz of nitrate to 100 lb (derived)
          """)
  void dry_cure_is_salt_over_green_weight(
      String id, String salt, String share, String meat, String ppm, String source) {
    Worked worked = Sums.ingoingDry(dose(salt, share), Base.skinFree(q(meat)));
    assertEquals(ppm, rounded(worked, ppm), source);
  }

  @ParameterizedTest(name = "{0}: {5} ppm")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          # id   | salt    | share  | pickle      | taken up | ppm       | source
          E2     | 50 lb   | 0.75 % | 462.1875 lb | 20 %     | 162.272   | a worked pump, stated as 162 ppm (second-hand)
          E3     | 32 g    | 5.88 % | 1266 g      | 10 %     | 148.62559 | a worked brine, stated as 148.6256 (second-hand)
          E4     | 0.06 lb | 100 %  | 100 lb      | 20 %     | 120.000   | a worked pump, stated as 120 ppm (second-hand)
          T9     | 0.12 lb | 100 %  | 100 lb      | 10 %     | 120.00    | 9 CFR 424.22(b)(2), pick-up, at the ceiling (derived)
          T9 4 % | 0.12 lb | 100 %  | 100 lb      | 4 %      | 48.00     | as T9 (derived)
          T10    | 1.92 lb | 6.25 % | 100 lb      | 10 %     | 120.00    | 9 CFR 424.22(b)(1), the set dose (derived)
          T11    | 1.92 lb | 6.25 % | 100 lb      | 12 %     | 144.00    | 20 % above T10 (derived)
          T11 8 % | 1.92 lb | 6.25 % | 100 lb     | 8 %      | 96.00     | 20 % below T10 (derived)
          T12    | 0.55 lb | 100 %  | 100 lb      | 10 %     | 550.00    | 9 CFR 424.22(b)(1), erythorbate (derived)
          T13    | 0.60 lb | 100 %  | 100 lb      | 10 %     | 600.00    | erythorbate monohydrate as fed; its worth as anhydrous salt is not this sum (derived)
          T15    | 2 lb    | 100 %  | 1000 lb     | 10 %     | 200.00    | 9 CFR 424.21(c), 2 lb to 100 gal at 10 lb the gallon (derived)
          T15 w  | 2 lb    | 100 %  | 834.5 lb    | 10 %     | 239.66    | the same at 8.345 lb the gallon (derived)
          T15 n  | 7 lb    | 100 %  | 1000 lb     | 10 %     | 700.00    | 9 CFR 424.21(c), 7 lb of nitrate to 100 gal (derived)
          """)
  void pumped_and_picked_up_cure_is_its_share_of_the_pickle(
      String id, String salt, String share, String pickle, String up, String ppm, String source) {
    Worked worked = Sums.ingoingTakenUp(dose(salt, share), q(pickle), q(up), SKIN_FREE);
    assertEquals(ppm, rounded(worked, ppm), source);
  }

  @Test
  void immersion_until_both_are_alike_is_salt_over_meat_and_pickle() {
    Worked worked =
        Sums.ingoingEquilibrium(
            dose("28.8 g", "6.25 %"), Base.skinFree(q("10.000 kg")), q("5.000 kg"));
    assertEquals(q("120 ppm"), worked.value(), "T8, 9 CFR 424.22(b)(2) at the ceiling (derived)");
    assertEquals(
        "28.8 g × 6.25 % / (10 kg + 5 kg pickle) × 1,000,000",
        worked.formula().in(Language.ENGLISH));
  }

  @ParameterizedTest(name = "{0} on {1}: {2} ppm")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          # salt   | whole  | ppm     | what went wrong
          17.2 g   | 5400 g | 199.07  | weighed with its rind on
          17.2 g   | 4860 g | 221.19  | what was rubbed in fact
          10 g     | 2310 g | 270.56  | two level teaspoons, at their lightest
          12 g     | 2310 g | 324.68  | the same, heaped
          144.36 g | 4812 g | 1875.00 | 3 % of the strong cure, as if it were the ready mix
          """)
  void a_mistake_at_the_scale_is_no_small_one(
      String salt, String whole, String ppm, String mistake) {
    Worked worked = Sums.ingoingDry(dose(salt, "6.25 %"), Base.skinFree(q(whole)));
    assertEquals(ppm, rounded(worked, ppm), mistake + " (derived)");
  }

  @ParameterizedTest(name = "{0} g on 4812 g: {1} ppm, {2}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          # salt | ppm    | against 200 ppm
          15.39  | 199.89 | below
          15.40  | 200.02 | above
          15.41  | 200.15 | above
          """)
  void a_hundredth_of_a_gram_decides_and_print_does_not(String salt, String ppm, String falls) {
    Worked worked = Sums.ingoingDry(dose(salt + " g", "6.25 %"), Base.skinFree(q("4812 g")));
    assertEquals(ppm, rounded(worked, ppm), "a made-up boundary set (derived)");
    assertEquals(falls.equals("above"), worked.value().isAbove(q("200 ppm")));
    assertEquals("200", rounded(worked, "0"), "all three round to the limit");
  }

  @ParameterizedTest(name = "{0}: {4} ppm")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          # id      | salt   | whole     | rind   | ppm    | source
          T6        | 32.0 g | 10.000 kg | 10 %   | 222.22 | FSIS Directive 7620.3 p. 28, share of rind (second-hand)
          T7        | 28.8 g | 10.000 kg | 10 %   | 200.00 | FSIS Directive 7620.3 p. 28, share of rind (second-hand)
          T6 weighed | 32.0 g | 10.000 kg | 1 kg  | 222.22 | 9 CFR 424.22(b), the actual skin-free weight (derived)
          T7 weighed | 28.8 g | 10.000 kg | 1 kg  | 200.00 | 9 CFR 424.22(b), the actual skin-free weight (derived)
          S2 a      | 17.2 g | 5400 g    | 540 g  | 221.19 | a made-up belly, 199.1 ppm on the weight with its rind (derived)
          """)
  void rind_is_no_meat(
      String id, String salt, String whole, String rind, String ppm, String source) {
    Base base =
        rind.endsWith("%") ? Base.lessShare(q(whole), q(rind)) : Base.lessRind(q(whole), q(rind));
    assertEquals(ppm, rounded(Sums.ingoingDry(dose(salt, "6.25 %"), base), ppm), source);
  }

  /**
   * With its rind on, a piece may take up a tenth less: the ceiling of 120 ppm is 108 of it all.
   */
  @ParameterizedTest(name = "{0} lb, rind {2} of {1}: {3} ppm")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          # salt | whole | rind | ppm    | source
          1.92   | 10 kg | 10 % | 133.33 | T10 with the rind on; Directive 7620.3 p. 28 (second-hand)
          1.728  | 10 kg | 10 % | 120.00 | 108 ppm of the whole weight are 120 of the meat (derived)
          1.728  | 10 kg | 1 kg | 120.00 | the same with the rind weighed (derived)
          """)
  void what_a_piece_with_its_rind_on_took_up_is_in_the_meat(
      String salt, String whole, String rind, String ppm, String source) {
    Base base =
        rind.endsWith("%") ? Base.lessShare(q(whole), q(rind)) : Base.lessRind(q(whole), q(rind));
    Worked worked = Sums.ingoingTakenUp(dose(salt + " lb", "6.25 %"), q("100 lb"), q("10 %"), base);
    assertEquals(ppm, rounded(worked, ppm), source);
  }

  @Test
  void the_sum_is_written_out_with_its_numbers_put_in() {
    List<Dose> two = List.of(new Dose(q("11.5 g"), q("6.25 %")), new Dose(q("2 g"), q("6.25 %")));
    assertEquals(
        "11.5 g × 6.25 % / 4812 g × 1,000,000",
        Sums.ingoingDry(two.subList(0, 1), Base.skinFree(q("4812 g")))
            .formula()
            .in(Language.ENGLISH));
    assertEquals(
        "(11.5 g × 6.25 % + 2 g × 6.25 %) / (5400 g − 540 g rind) × 1,000,000",
        Sums.ingoingDry(two, Base.lessRind(q("5400 g"), q("540 g")))
            .formula()
            .in(Language.ENGLISH));
    assertEquals(
        "11.5 g × 6.25 % / (5400 g × (1 − 10 % rind)) × 1,000,000",
        Sums.ingoingDry(two.subList(0, 1), Base.lessShare(q("5400 g"), q("10 %")))
            .formula()
            .in(Language.ENGLISH));
    assertEquals(
        "1.92 lb × 6.25 % × 10 % / 100 lb pickle × 1,000,000",
        Sums.ingoingTakenUp(dose("1.92 lb", "6.25 %"), q("100 lb"), q("10 %"), SKIN_FREE)
            .formula()
            .in(Language.ENGLISH));
    assertEquals(
        "1.92 lb × 6.25 % × 10 % / 100 lb pickle × 5400 g / (5400 g − 540 g rind) × 1,000,000",
        Sums.ingoingTakenUp(
                dose("1.92 lb", "6.25 %"),
                q("100 lb"),
                q("10 %"),
                Base.lessRind(q("5400 g"), q("540 g")))
            .formula()
            .in(Language.ENGLISH));
  }

  /** Molar masses of sodium and potassium nitrite, 68.995 and 85.104 g/mol (second-hand). */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          # as KNO2    | as NaNO2 | source
          246 ppm      | 199.44   | 9 CFR 424.22(b)(3) prints 246 beside 200 (read)
          246.69 ppm   | 200.00   | T14, by molecular weight (derived)
          148 ppm      | 119.99   | 9 CFR 424.22(b)(2) prints 148 beside 120 (read)
          123 ppm      | 99.72    | 9 CFR 424.22(b)(1)(ii)(A) prints 123 beside 100 (read)
          """)
  void potassium_nitrite_is_worth_less(String potassium, String sodium, String source) {
    Quantity worth = Sums.asSodiumNitrite(q(potassium));
    assertEquals(sodium, worth.value().rounded(2).toPlainString(), source);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          # now    | green    | %        | source
          5400 g   | 5400 g   | 100      | 9 CFR 319.107, at the limit (read)
          5401 g   | 5400 g   | 100.0185 | 9 CFR 319.107, just above (read)
          5399 g   | 5.4 kg   | 99.9815  | 9 CFR 319.107, just below (read)
          82 lb    | 100 lb   | 82       | 9 CFR 319.106(c), 18 % lost (read)
          95 kg    | 100 kg   | 95       | USDA leaflet, cured in dry salt (read)
          """)
  void a_yield_is_weight_now_over_green_weight(
      String now, String green, String per, String source) {
    Worked worked = Sums.yieldOf(q(now), q(green));
    assertEquals(0, new BigDecimal(per).compareTo(worked.value().value().rounded(4)), source);
    assertEquals(Unit.PERCENT, worked.value().unit());
    assertEquals(q(now) + " / " + q(green) + " × 100", worked.formula().in(Language.ENGLISH));
  }

  /** T16: a fraction that was entered as 6.25 in place of 0.0625 (second-hand). */
  @ParameterizedTest
  @ValueSource(strings = {"625 %", "100.01 %", "-1 %"})
  void a_share_outside_of_0_to_100_is_refused(String share) {
    assertThrows(IllegalArgumentException.class, () -> new Dose(q("1 g"), q(share)));
  }

  @ParameterizedTest
  @ValueSource(strings = {"-1 g", "1 h", "1 °C", "1"})
  void a_dose_that_is_no_mass_is_refused(String mass) {
    assertThrows(IllegalArgumentException.class, () -> new Dose(q(mass), q("6.25 %")));
  }

  @Test
  void a_base_without_meat_is_refused() {
    assertThrows(IllegalArgumentException.class, () -> Base.skinFree(q("0 g")));
    assertThrows(IllegalArgumentException.class, () -> Base.lessRind(q("540 g"), q("540 g")));
    assertThrows(IllegalArgumentException.class, () -> Base.lessRind(q("500 g"), q("540 g")));
    assertThrows(IllegalArgumentException.class, () -> Base.lessShare(q("500 g"), q("100 %")));
  }

  @Test
  void rubs_add_up_in_whatever_units_and_order() {
    SplittableRandom random = new SplittableRandom(SEED);
    for (int i = 0; i < 2_000; i++) {
      Dose first = any(random);
      Dose second = any(random);
      Base base = Base.skinFree(Quantity.of(random.nextLong(1, 20_000), Unit.GRAM));
      String message = "seed " + SEED + ", round " + i + ": " + first + ", " + second;
      Ratio both = Sums.ingoingDry(List.of(first, second), base).value().value();
      Ratio turned = Sums.ingoingDry(List.of(second, first), base).value().value();
      Ratio one = Sums.ingoingDry(List.of(first), base).value().value();
      Ratio other = Sums.ingoingDry(List.of(second), base).value().value();
      assertEquals(both, turned, message);
      assertEquals(both, one.plus(other), message);
      Dose ounces = new Dose(first.mass().in(Unit.OUNCE), first.share().in(Unit.PPM));
      assertEquals(one, Sums.ingoingDry(List.of(ounces), base).value().value(), message);
      Base half = Base.lessShare(base.mass(), q("50 %"));
      assertEquals(one.plus(one), Sums.ingoingDry(List.of(first), half).value().value(), message);
    }
  }

  @Test
  void more_salt_or_less_meat_is_never_less_nitrite() {
    SplittableRandom random = new SplittableRandom(SEED);
    for (int i = 0; i < 2_000; i++) {
      Dose less = any(random);
      Dose more = new Dose(less.mass().minus(q("-0.01 g")), less.share());
      long grams = random.nextLong(2, 20_000);
      Base base = Base.skinFree(Quantity.of(grams, Unit.GRAM));
      Base smaller = Base.skinFree(Quantity.of(grams - 1, Unit.GRAM));
      String message = "seed " + SEED + ", round " + i;
      Quantity ppm = Sums.ingoingDry(List.of(less), base).value();
      assertTrue(Sums.ingoingDry(List.of(more), base).value().isAbove(ppm), message);
      assertTrue(Sums.ingoingDry(List.of(less), smaller).value().isAbove(ppm), message);
    }
  }

  private static Dose any(SplittableRandom random) {
    return new Dose(
        Quantity.of(BigDecimal.valueOf(random.nextLong(1, 20_000), 2), Unit.GRAM),
        Quantity.of(BigDecimal.valueOf(random.nextLong(1, 10_000), 2), Unit.PERCENT));
  }
}
