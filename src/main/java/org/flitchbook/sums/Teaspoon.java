package org.flitchbook.sums;

import java.util.Collections;
import java.util.List;
import org.flitchbook.measure.Quantity;

/**
 * What a level teaspoon of a 6.25 % curing salt was said or found to weigh. The figures are here to
 * show why a spoon is refused; none of them may be used to turn spoons into grams.
 *
 * @param mass of one level teaspoon
 * @param standing how the figure was met
 */
public record Teaspoon(Quantity mass, String standing) {

  /** Belongs beside every use of these figures. */
  public static final String STANDING = "common practice, no source";

  /** From the lightest to the heaviest; two sets of spoons differed by a quarter. */
  public static final List<Teaspoon> MET =
      List.of(
          stated("4.2 g", "stated for one teaspoon"),
          stated("5.6 g", "0.70 g for an eighth of a teaspoon"),
          stated("5.67 g", "five teaspoons to the ounce"),
          stated("6.67 g", "stated for one teaspoon"),
          stated("7.1 g", "one teaspoon put on a scale"));

  private static Teaspoon stated(String mass, String how) {
    return new Teaspoon(Quantity.required(mass), how + "; " + STANDING);
  }

  /**
   * What spoons could have brought into the meat.
   *
   * @param least with the lightest of {@link #MET}
   * @param most with the heaviest
   */
  public record Spread(Worked least, Worked most) {}

  /**
   * The spread of so many level teaspoons by the dry-cure sum of {@link Sums#ingoingDry}.
   *
   * @param spoons more than 0
   * @param share of nitrite in the curing salt
   */
  public static Spread of(int spoons, Quantity share, Base base) {
    if (spoons <= 0) {
      throw new IllegalArgumentException(spoons + " teaspoons");
    }
    return new Spread(
        worked(MET.get(0), spoons, share, base),
        worked(MET.get(MET.size() - 1), spoons, share, base));
  }

  private static Worked worked(Teaspoon spoon, int spoons, Quantity share, Base base) {
    Dose one = new Dose(spoon.mass(), share);
    return Sums.ingoingDry(Collections.nCopies(spoons, one), base);
  }
}
