package org.flitchbook.sums;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.Optional;
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

  /** 9 CFR 424.22(b)(1) counts the anhydrous sodium salt, of about 198 g/mol (read). */
  private static final Ratio ANHYDROUS = Ratio.of(198, 216);

  private Sums() {}

  /**
   * Dry cure, and comminuted meat: mass of the salt ÷ green weight × 1,000,000 (Directive 7620.3
   * pp. 15 and 24). All that was applied counts, every rub.
   *
   * @return ppm
   */
  public static Worked ingoingDry(List<Dose> doses, Base base) {
    return share(Formula.sum(doses).over(base.formula()), Unit.PPM);
  }

  /**
   * Pumped, and immersion by pick-up: salt in the pickle × share taken up ÷ pickle × 1,000,000
   * (Directive 7620.3 pp. 19 and 21). The pickle is weighed, with all that is in it. What a piece
   * with its rind on took up is in the meat: × green weight ÷ skin-free weight, so that a ceiling
   * on the whole weight falls by the rind (p. 28).
   *
   * @param takenUp of the green weight as it was weighed, its rind included
   * @return ppm of the skin-free green weight
   */
  public static Worked ingoingTakenUp(
      List<Dose> doses, Quantity pickle, Quantity takenUp, Base base) {
    Formula share = Formula.sum(doses).times(Formula.of(takenUp)).over(pickle(pickle));
    Formula inMeat = share.times(Formula.of(base.green())).over(base.formula());
    return share(base.hasRind() ? inMeat : share, Unit.PPM);
  }

  /**
   * Immersion by equilibrium: salt ÷ (green weight + pickle) × 1,000,000 (Directive 7620.3 p. 22);
   * for meat that stays in the pickle until both are alike.
   *
   * @return ppm
   */
  public static Worked ingoingEquilibrium(List<Dose> doses, Base base, Quantity pickle) {
    Formula both = base.formula().plus(pickle(pickle));
    return share(Formula.sum(doses).over(both), Unit.PPM);
  }

  private static Formula pickle(Quantity mass) {
    return new Formula.Term(mass, "pickle");
  }

  /**
   * Two or more ways of curing on one piece, such as pumped and then rubbed: what each brings into
   * the same green weight is added up. Directive 7620.3 p. 33 treats the case; its own rule for
   * putting them together is unverified (standing: memory, low), so the strict side is taken: the
   * sum is held against each way's own limit, of which the stricter counts.
   *
   * @param parts at least one, in the same unit
   */
  public static Worked added(List<Worked> parts) {
    return Formula.sum(parts.stream().map(Worked::formula).toList())
        .as(parts.get(0).value().unit());
  }

  /** A potassium nitrite share as the sodium nitrite of equal strength, by molar mass. */
  public static Quantity asSodiumNitrite(Quantity potassiumNitrite) {
    return converted(potassiumNitrite, Molar.POTASSIUM_NITRITE, Molar.SODIUM_NITRITE);
  }

  /** A potassium nitrate share as the sodium nitrate of equal strength, by molar mass. */
  public static Quantity asSodiumNitrate(Quantity potassiumNitrate) {
    return converted(potassiumNitrate, Molar.POTASSIUM_NITRATE, Molar.SODIUM_NITRATE);
  }

  private static Quantity converted(Quantity quantity, Molar from, Molar to) {
    return new Quantity(quantity.value().times(from.as(to)), quantity.unit());
  }

  /**
   * Sodium erythorbate monohydrate, 216 g/mol, as the anhydrous salt that its limit counts: 600 ppm
   * as fed are 550.
   */
  public static Quantity asAnhydrousAccelerator(Quantity monohydrate) {
    return new Quantity(monohydrate.value().times(ANHYDROUS), monohydrate.unit());
  }

  /**
   * Ingoing nitrite as the ion: the sum as NaNO2 × the molar mass of NO2 ÷ that of NaNO2, see
   * {@link Molar}.
   *
   * @param sodiumNitrite worked as NaNO2
   * @return in the same unit
   */
  public static Worked asNitriteIon(Worked sodiumNitrite) {
    return sodiumNitrite
        .formula()
        .times(Molar.NITRITE_ION.term())
        .over(Molar.SODIUM_NITRITE.term())
        .as(sodiumNitrite.value().unit());
  }

  /**
   * A sum of the cure that was worked in ppm, in %: for salt, whose limits are written so.
   *
   * @throws IllegalArgumentException where it is not the sum of a share
   */
  public static Worked inPercent(Worked sum) {
    if (sum.formula() instanceof Formula.Scaled scaled) {
      return share(scaled.share(), Unit.PERCENT);
    }
    throw new IllegalArgumentException(sum + " is no sum of a share");
  }

  /** Weight now ÷ green weight × 100 (9 CFR 319.107 compares the two). */
  public static Worked yieldOf(Quantity now, Quantity green) {
    return share(Formula.of(now).over(Formula.of(green)), Unit.PERCENT);
  }

  /**
   * Salt in the water phase: salt ÷ (salt + moisture) × 100 (FSIS, Principles of Preservation of
   * Shelf-Stable Dried Meat Products, 2005, p. 160), from laboratory figures.
   */
  public static Worked brineStrength(Quantity salt, Quantity moisture) {
    Formula water = Formula.of(salt).plus(Formula.of(moisture));
    return share(Formula.of(salt).over(water), Unit.PERCENT);
  }

  /**
   * The expanded uncertainty (k = 2) of a dry-cure sum after the GUM, independent inputs: P × 2 ×
   * √((u cure/cure)² + (u meat/meat)² + (a²/3)), with u of {@link Weighed.Weighing#variance}.
   *
   * @param strength half the width a of the range in which the share of nitrite in the cure surely
   *     lies, relative to that share (2 % where 6.25 % may be 6.125 to 6.375 %), rectangular;
   *     nothing where it counts as exact
   * @return in the unit of the result, rounded to one decimal
   * @throws IllegalArgumentException where a strength is below 0
   * @throws ArithmeticException where cure or meat comes to nothing
   */
  public static Quantity uncertainty(
      Quantity result, Weighed cure, Weighed meat, Optional<Quantity> strength) {
    Ratio half = strength.map(Quantity::inBase).orElse(Ratio.ZERO);
    if (half.signum() < 0) {
      throw new IllegalArgumentException("a strength within " + strength.orElseThrow());
    }
    Ratio variance =
        cure.relativeVariance()
            .plus(meat.relativeVariance())
            .plus(half.times(half).over(Ratio.of(3)));
    BigDecimal relative = variance.rounded(30).sqrt(MathContext.DECIMAL64);
    BigDecimal expanded =
        result.value().rounded(12).multiply(relative).multiply(BigDecimal.valueOf(2));
    return new Quantity(Ratio.of(Ratio.of(expanded).rounded(1)), result.unit());
  }

  /**
   * Whether a value is too near to a limit for the measurement to tell on which side it lies: the
   * limit is above value − U and below value + U. A limit at either end is not straddled. Only a
   * caution: the limit itself is judged on the value as it is.
   *
   * @param expanded U, 0 or more; a difference where it is a temperature
   */
  public static boolean inGuardBand(Quantity value, Quantity expanded, Quantity limit) {
    Ratio width = expanded.differenceIn(value.unit()).value();
    return value.value().minus(limit.in(value.unit()).value()).abs().isBelow(width);
  }

  /**
   * The boiling point of water at an altitude by a published table (second-hand), within 0.3 °F of
   * the standard atmosphere up to 10,000 ft. Weather shifts the true value by about 1 °F.
   *
   * @param altitude a length; below the sea and beyond 10,000 ft the table's last line is drawn on
   * @return °F
   */
  public static Quantity boilingPoint(Quantity altitude) {
    return Boiling.at(altitude);
  }

  static Worked share(Formula formula, Unit unit) {
    return new Formula.Scaled(formula, unit).as(unit);
  }
}
