package org.flitchbook.account;

import java.time.LocalDate;
import java.time.Period;
import java.time.ZoneId;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.flitchbook.lot.Lot;
import org.flitchbook.plan.Retention;
import org.flitchbook.sheet.What;

/**
 * Until when a record is kept.
 *
 * @param until the last day on which it must still be there
 * @param from the day of the last shipment, or the day judged where nothing was shipped
 * @param rule what that rests on, in words
 */
public record Keeping(
    LocalDate until, LocalDate from, boolean fromShipment, Period keep, String rule) {

  static Keeping of(Retention retention, List<Lot> lots, LocalDate day, ZoneId zone) {
    Optional<LocalDate> shipped =
        lots.stream()
            .flatMap(lot -> lot.all(What.DISPATCHED).stream())
            .map(entry -> entry.time().written().atZone(zone).toLocalDate())
            .max(Comparator.naturalOrder());
    LocalDate from = shipped.orElse(day);
    return new Keeping(
        retention.until(from), from, shipped.isPresent(), retention.keep(), retention.rule());
  }
}
