package org.flitchbook.plan;

import java.time.LocalDate;
import java.time.Period;

/**
 * How long a record is kept, and by which rule.
 *
 * @param keep from the day of the last shipment, or from the day judged while nothing has left
 * @param rule what it rests on, in words
 */
public record Retention(Period keep, String rule) {

  public Retention {
    if (keep.isNegative() || keep.isZero()) {
      throw new IllegalArgumentException("records kept for " + keep);
    }
  }

  /** The last day on which the record must still be there. */
  public LocalDate until(LocalDate from) {
    return from.plus(keep);
  }

  /** {@code 2 year}, {@code 18 month}. */
  public String shown() {
    return shown(keep);
  }

  static String shown(Period period) {
    return period.getMonths() == 0
        ? period.getYears() + " year"
        : period.toTotalMonths() + " month";
  }
}
