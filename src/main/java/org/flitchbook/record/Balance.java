package org.flitchbook.record;

import java.util.List;
import java.util.Optional;
import org.flitchbook.lot.Lot;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.measure.Unit;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.What;

/**
 * What of a lot was packed, left the house, came back, was destroyed, and should be there still.
 */
record Balance(Lot lot) {

  /** The sum of its entries in g; empty where one of them has no weight. */
  Optional<Quantity> sum(What what) {
    return grams(what).map(grams -> new Quantity(grams, Unit.GRAM));
  }

  private Optional<Ratio> grams(What what) {
    List<Entry> entries = lot.all(what);
    return entries.stream().allMatch(entry -> entry.quantity().isPresent())
        ? Optional.of(
            entries.stream().map(entry -> entry.amount().inBase()).reduce(Ratio.ZERO, Ratio::plus))
        : Optional.empty();
  }

  /** Packed − dispatched + returned − destroyed; empty where one of them isn't known. */
  Optional<Quantity> left() {
    return grams(What.PACKED)
        .flatMap(packed -> grams(What.DISPATCHED).map(packed::minus))
        .flatMap(left -> grams(What.RETURNED).map(left::plus))
        .flatMap(left -> grams(What.DESTROYED).map(left::minus))
        .map(grams -> new Quantity(grams, Unit.GRAM));
  }
}
