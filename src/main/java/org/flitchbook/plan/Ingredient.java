package org.flitchbook.plan;

import java.util.Optional;
import java.util.stream.Stream;
import org.flitchbook.json.Key;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.measure.Unit;
import org.flitchbook.practice.Practice;

/**
 * A curing ingredient's lot with the strength read off its label; a share that is not stated is not
 * known, and no strength is ever assumed.
 *
 * @param other what is left, such as sugar or what keeps it from caking
 * @param support what bears an unusual strength out: the bag's label
 */
public record Ingredient(
    String lot,
    String name,
    @Key(format = "share of the whole") Optional<Quantity> sodiumNitrite,
    @Key(format = "share of the whole") Optional<Quantity> sodiumNitrate,
    @Key(format = "share of the whole") Optional<Quantity> potassiumNitrite,
    @Key(format = "share of the whole") Optional<Quantity> potassiumNitrate,
    @Key(format = "share of the whole") Optional<Quantity> salt,
    @Key(format = "share of the whole") Optional<Quantity> sodiumAscorbate,
    @Key(format = "share of the whole") Optional<Quantity> sodiumErythorbate,
    @Key(format = "share of the whole") Optional<Quantity> sodiumErythorbateMonohydrate,
    @Key(format = "share of the whole") Optional<Quantity> other,
    @Key(otherwise = "") String custodian,
    @Key(format = "support") Optional<String> support) {

  /** Of either nitrite, in %; 0 where none is stated. */
  public Quantity nitrite() {
    return sum(Stream.of(sodiumNitrite, potassiumNitrite));
  }

  /** All that is stated of it, in %. */
  Quantity stated() {
    return sum(
        Stream.of(
            sodiumNitrite,
            sodiumNitrate,
            potassiumNitrite,
            potassiumNitrate,
            salt,
            sodiumAscorbate,
            sodiumErythorbate,
            sodiumErythorbateMonohydrate,
            other));
  }

  private static Quantity sum(Stream<Optional<Quantity>> shares) {
    Ratio whole =
        shares.flatMap(Optional::stream).map(Quantity::inBase).reduce(Ratio.ZERO, Ratio::plus);
    return new Quantity(whole.times(Ratio.of(100)), Unit.PERCENT);
  }

  /** Whether its strength is not that of a cure for a day's use, and nothing bears it out. */
  public boolean lacksLabel(Practice.DayCure usual) {
    return nitrite().value().signum() > 0 && !usual.includes(nitrite()) && support.isEmpty();
  }
}
