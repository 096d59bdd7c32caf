package org.flitchbook.check;

import static org.flitchbook.message.Message.say;

import java.util.Optional;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.measure.Unit;
import org.flitchbook.message.Message;
import org.flitchbook.plan.Figure;
import org.flitchbook.plan.Ingredient;
import org.flitchbook.plan.Plan;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.What;
import org.flitchbook.sums.Sums;

/**
 * How much of what a figure counts is in what was weighed; never assumed.
 *
 * @param potassium how much sodium nitrite a part of potassium nitrite counts for, where a limit
 *     prints it; by their molar masses where it is empty
 */
record CureStrength(Plan plan, Optional<Ratio> potassium) {

  /** Plain salt is salt through and through; of all else the plan must state the share. */
  Optional<Quantity> of(Figure figure, Entry cure) {
    if (cure.is(What.SALT)) {
      return Optional.of(Quantity.of(100, Unit.PERCENT));
    }
    return plan.ingredient(cure.item())
        .flatMap(
            ingredient ->
                switch (figure) {
                  case INGOING_NITRITE, INGOING_NITRITE_ION ->
                      sum(
                          ingredient.sodiumNitrite(),
                          ingredient.potassiumNitrite().map(this::asSodiumNitrite));
                  case INGOING_NITRATE ->
                      sum(
                          ingredient.sodiumNitrate(),
                          ingredient.potassiumNitrate().map(Sums::asSodiumNitrate));
                  case INGOING_SALT -> ingredient.salt();
                  default -> accelerator(ingredient);
                });
  }

  private Quantity asSodiumNitrite(Quantity share) {
    return potassium
        .map(worth -> new Quantity(share.value().times(worth), share.unit()))
        .orElseGet(() -> Sums.asSodiumNitrite(share));
  }

  private static Optional<Quantity> accelerator(Ingredient ingredient) {
    return sum(
        sum(ingredient.sodiumAscorbate(), ingredient.sodiumErythorbate()),
        ingredient.sodiumErythorbateMonohydrate().map(Sums::asAnhydrousAccelerator));
  }

  private static Optional<Quantity> sum(Optional<Quantity> a, Optional<Quantity> b) {
    return a.flatMap(one -> b.map(other -> one.inBase().plus(other.inBase())))
        .map(both -> new Quantity(both.times(Ratio.of(100)), Unit.PERCENT))
        .or(() -> a)
        .or(() -> b);
  }

  /** Why a sum can't be made of it. */
  Message unknown(Figure figure, Entry cure) {
    Object name =
        plan.ingredient(cure.item())
            .<Object>map(Ingredient::name)
            .orElseGet(() -> say("check.strength.an-ingredient", "an ingredient"));
    return say(
        "check.strength.unknown",
        "the plan does not state the strength of {0} (lot {1}) for {2}",
        name,
        cure.item().isEmpty() ? say("check.strength.not-written", "not written") : cure.item(),
        figure);
  }
}
