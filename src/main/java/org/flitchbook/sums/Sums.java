package org.flitchbook.sums;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.stream.Collectors;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.measure.Unit;

/**
 * The sums of the trade as pure functions. All of them are exact; rounding belongs to print. The
 * formulas are those of FSIS Directive 7620.3 (Processing Inspectors' Calculations Handbook,
 * revised 1995) by quotation, second-hand; the base is always the green weight of the meat, never
 * the finished weight.
 */
public final class Sums {

  private static final Ratio MILLION = Ratio.of(1_000_000);
  private static final String PER_MILLION = " × 1,000,000";
  private static final Ratio HUNDRED = Ratio.of(100);

  /** Molar masses in g/mol: NaNO2 68.995, KNO2 85.104 (so that 200 ppm are 246.7 as KNO2). */
  private static final Ratio POTASSIUM_TO_SODIUM = Ratio.of("68.995").over(Ratio.of("85.104"));

  /**
   * Molar masses in g/mol from the abridged standard atomic weights of IUPAC's CIAAW (N 14.007, O
   * 15.999, Na 22.990), which are from memory; the IUPAC table of 1995, which was read, gives the
   * same five decimals.
   */
  private static final String NITRITE_ION = "46.005";

  private static final String SODIUM_NITRITE = "68.995";

  private Sums() {}

  /**
   * Dry cure, and comminuted meat: mass of the salt ÷ green weight × 1,000,000 (Directive 7620.3
   * pp. 15 and 24). All that was applied counts, every rub.
   *
   * @return ppm
   */
  public static Worked ingoingDry(List<Dose> doses, Base base) {
    return new Worked(
        ppm(content(doses).over(base.mass().inBase())),
        shown(doses) + " / " + base.formula() + PER_MILLION);
  }

  /**
   * Pumped, and immersion by pick-up: salt in the pickle × share taken up ÷ pickle × 1,000,000
   * (Directive 7620.3 pp. 19 and 21). The pickle is weighed, with all that is in it.
   *
   * @return ppm of the green weight
   */
  public static Worked ingoingTakenUp(List<Dose> doses, Quantity pickle, Quantity takenUp) {
    return new Worked(
        ppm(content(doses).times(takenUp.inBase()).over(pickle.inBase())),
        shown(doses) + " × " + takenUp + " / " + pickle + " pickle" + PER_MILLION);
  }

  /**
   * Immersion by equilibrium: salt ÷ (green weight + pickle) × 1,000,000 (Directive 7620.3 p. 22);
   * for meat that stays in the pickle until both are alike.
   *
   * @return ppm
   */
  public static Worked ingoingEquilibrium(List<Dose> doses, Base base, Quantity pickle) {
    return new Worked(
        ppm(content(doses).over(base.mass().inBase().plus(pickle.inBase()))),
        shown(doses) + " / (" + base.formula() + " + " + pickle + " pickle)" + PER_MILLION);
  }

  /** A potassium nitrite share as the sodium nitrite of equal strength. */
  public static Quantity asSodiumNitrite(Quantity potassiumNitrite) {
    return new Quantity(
        potassiumNitrite.value().times(POTASSIUM_TO_SODIUM), potassiumNitrite.unit());
  }

  /**
   * A potassium nitrate share as the sodium nitrate of equal strength (84.995 to 101.103 g/mol).
   */
  public static Quantity asSodiumNitrate(Quantity potassiumNitrate) {
    Ratio factor = Ratio.of("84.995").over(Ratio.of("101.103"));
    return new Quantity(potassiumNitrate.value().times(factor), potassiumNitrate.unit());
  }

  /**
   * Ingoing nitrite as the ion: the sum as NaNO2 × 46.005 / 68.995, the molar masses of NO2 and
   * NaNO2 (N 14.007, O 15.999, Na 22.990 g/mol: standard atomic weights, CIAAW/IUPAC, abridged,
   * from memory).
   *
   * @param sodiumNitrite worked as NaNO2
   * @return in the same unit
   */
  public static Worked asNitriteIon(Worked sodiumNitrite) {
    Ratio factor = Ratio.of(NITRITE_ION).over(Ratio.of(SODIUM_NITRITE));
    Quantity value = sodiumNitrite.value();
    return new Worked(
        new Quantity(value.value().times(factor), value.unit()),
        sodiumNitrite.formula() + " × " + NITRITE_ION + " / " + SODIUM_NITRITE);
  }

  /**
   * A sum of the cure that was worked in ppm, in %: for salt, whose limits are written so.
   *
   * @throws IllegalArgumentException where the formula is not one in ppm
   */
  public static Worked inPercent(Worked sum) {
    String formula = sum.formula();
    if (!formula.endsWith(PER_MILLION)) {
      throw new IllegalArgumentException(formula + " is no sum in ppm");
    }
    String share = formula.substring(0, formula.length() - PER_MILLION.length());
    return new Worked(sum.value().in(Unit.PERCENT), share + " × 100");
  }

  /**
   * The most of an ingredient that keeps to a ceiling: ceiling × base ÷ share, exact; to be rounded
   * down to the step of the scale.
   *
   * @return g
   */
  public static Quantity mostUnder(Quantity ceiling, Base base, Quantity share) {
    return new Quantity(
        ceiling.inBase().times(base.mass().inBase()).over(share.inBase()), Unit.GRAM);
  }

  /** Weight now ÷ green weight × 100 (9 CFR 319.107 compares the two). */
  public static Worked yieldOf(Quantity now, Quantity green) {
    return new Worked(
        new Quantity(now.inBase().over(green.inBase()).times(HUNDRED), Unit.PERCENT),
        now + " / " + green + " × 100");
  }

  /**
   * Salt in the water phase: salt ÷ (salt + moisture) × 100 (FSIS, Principles of Preservation of
   * Shelf-Stable Dried Meat Products, 2005, p. 160), from laboratory figures.
   */
  public static Worked brineStrength(Quantity salt, Quantity moisture) {
    Ratio water = salt.inBase().plus(moisture.inBase());
    return new Worked(
        new Quantity(salt.inBase().over(water).times(HUNDRED), Unit.PERCENT),
        salt + " / (" + salt + " + " + moisture + ") × 100");
  }

  /**
   * What the scales can prove of a dry-cure sum, as an expanded uncertainty (k = 2): P × 2 × √((u
   * cure/cure)² + (u meat/meat)²) after the GUM, with u of a tared weighing = √(d²/6 + (d/2)²),
   * readability d and a repeatability of d/2.
   *
   * @return in the unit of the result, rounded to one decimal
   */
  public static Quantity uncertainty(
      Quantity result, Quantity cure, Quantity cureStep, Quantity meat, Quantity meatStep) {
    BigDecimal relative =
        square(relative(cure, cureStep))
            .add(square(relative(meat, meatStep)))
            .sqrt(MathContext.DECIMAL64);
    BigDecimal expanded =
        result.value().rounded(12).multiply(relative).multiply(BigDecimal.valueOf(2));
    return new Quantity(Ratio.of(Ratio.of(expanded).rounded(1)), result.unit());
  }

  private static BigDecimal relative(Quantity mass, Quantity step) {
    Ratio variance = Ratio.of(1, 6).plus(Ratio.of(1, 4));
    BigDecimal factor = variance.rounded(18).sqrt(MathContext.DECIMAL64);
    return step.inBase().over(mass.inBase()).rounded(18).multiply(factor);
  }

  private static BigDecimal square(BigDecimal value) {
    return value.multiply(value, MathContext.DECIMAL64);
  }

  /**
   * The boiling point of water: 212 °F − 0.0018 °F × altitude in ft, within 0.4 °F of the standard
   * atmosphere up to 10,000 ft (second-hand rule). Weather shifts the true value by about 1 °F.
   */
  public static Quantity boilingPoint(Quantity altitude) {
    Ratio feet = altitude.in(Unit.FOOT).value();
    return new Quantity(Ratio.of(212).minus(feet.times(Ratio.of("0.0018"))), Unit.FAHRENHEIT);
  }

  private static Ratio content(List<Dose> doses) {
    return doses.stream().map(dose -> dose.content().inBase()).reduce(Ratio.ZERO, Ratio::plus);
  }

  private static String shown(List<Dose> doses) {
    String sum = doses.stream().map(Dose::shown).collect(Collectors.joining(" + "));
    return doses.size() == 1 ? sum : "(" + sum + ")";
  }

  private static Quantity ppm(Ratio share) {
    return new Quantity(share.times(MILLION), Unit.PPM);
  }
}
