package org.flitchbook.sums;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.Map;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.measure.Unit;
import org.flitchbook.message.Language;
import org.junit.jupiter.api.Test;

/** A formula is printed, written as JSON and worked out from the same terms. */
final class FormulaTest {

  private static Quantity q(String text) {
    return Quantity.required(text);
  }

  private static String text(Worked worked) {
    return worked.formula().in(Language.ENGLISH);
  }

  @Test
  void a_sum_has_terms_operators_and_a_result() {
    Worked worked =
        Sums.ingoingDry(
            List.of(new Dose(q("11.5 g"), q("6.25 %")), new Dose(q("2 g"), q("6.25 %"))),
            Base.lessRind(q("5400 g"), q("540 g")));
    assertEquals(
        Map.of(
            "formula",
            Map.of(
                "share",
                Map.of(
                    "terms",
                    List.of(
                        Map.of(
                            "terms",
                            List.of(
                                Map.of(
                                    "terms",
                                    List.of("11.5 g", "6.25 %"),
                                    "operators",
                                    List.of("×")),
                                Map.of(
                                    "terms", List.of("2 g", "6.25 %"), "operators", List.of("×"))),
                            "operators",
                            List.of("+")),
                        Map.of(
                            "terms",
                            List.of("5400 g", Map.of("amount", "540 g", "of", "rind")),
                            "operators",
                            List.of("−"))),
                    "operators",
                    List.of("/")),
                "unit",
                "ppm"),
            "result",
            worked.value().toString()),
        worked.json());
    assertEquals(
        "(11.5 g × 6.25 % + 2 g × 6.25 %) / (5400 g − 540 g rind) × 1,000,000 = 173.611 ppm",
        worked.in(Language.ENGLISH));
  }

  /** 28.8 × 0.0625 / (9000 + 6000) = 120 ppm, both ways of taking the rind off (derived). */
  @Test
  void a_base_in_several_terms_keeps_its_parentheses() {
    List<Dose> doses = List.of(new Dose(q("28.8 g"), q("6.25 %")));
    Worked weighed =
        Sums.ingoingEquilibrium(doses, Base.lessRind(q("10 kg"), q("1 kg")), q("6 kg"));
    Worked estimated =
        Sums.ingoingEquilibrium(doses, Base.lessShare(q("10 kg"), q("10 %")), q("6 kg"));
    assertEquals(q("120 ppm"), weighed.value());
    assertEquals(weighed.value(), estimated.value());
    assertEquals(
        "28.8 g × 6.25 % / ((10 kg − 1 kg rind) + 6 kg pickle) × 1,000,000", text(weighed));
    assertEquals(
        "28.8 g × 6.25 % / ((10 kg × (1 − 10 % rind)) + 6 kg pickle) × 1,000,000", text(estimated));
  }

  /** Salt and the ion are worked out of each way by itself, so that the whole reads as it is. */
  @Test
  void two_ways_on_another_basis_read_as_they_are_worked() {
    Worked pump =
        Sums.ingoingTakenUp(
            List.of(new Dose(q("2 kg"), q("50 %"))),
            q("100 kg"),
            q("10 %"),
            Base.skinFree(q("1 kg")));
    Worked rub = Sums.ingoingDry(List.of(new Dose(q("10 g"), q("50 %"))), Base.skinFree(q("1 kg")));
    Worked salt = Sums.added(List.of(Sums.inPercent(pump), Sums.inPercent(rub)));
    assertEquals(
        "2 kg × 50 % × 10 % / 100 kg pickle × 100 + 10 g × 50 % / 1 kg × 100 = 0.6 %",
        salt.in(Language.ENGLISH));
    Worked ion = Sums.added(List.of(Sums.asNitriteIon(pump), Sums.asNitriteIon(rub)));
    assertEquals(Sums.asNitriteIon(Sums.added(List.of(pump, rub))).value(), ion.value());
  }

  @Test
  void its_few_words_are_put_into_the_language() {
    Language other =
        new Language() {
          @Override
          public String text(String id, String english) {
            return english;
          }

          @Override
          public String word(String family, String word) {
            return family + "-" + word;
          }
        };
    MassBalance balance = new MassBalance(q("9 g"), q("5 g"), q("2 g"), q("1 g"), q("0 g"));
    assertEquals(
        "9 g − 5 g sum-packed − 2 g sum-ends − 1 g sum-waste − 0 g sum-samples = 1 g",
        balance.unexplained().in(other));
  }

  @Test
  void what_is_no_sum_is_refused() {
    assertThrows(IllegalArgumentException.class, () -> Formula.of(q("130 °F")));
    Formula one = Formula.of(q("1 g"));
    List<Formula.Link> mixed =
        List.of(
            new Formula.Link(Formula.Operator.PLUS, one),
            new Formula.Link(Formula.Operator.TIMES, one));
    assertThrows(IllegalArgumentException.class, () -> new Formula.Chain(one, mixed));
    assertEquals(Ratio.of(3), one.plus(one).plus(one).as(Unit.GRAM).value().value());
  }
}
