package org.flitchbook.reading;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.flitchbook.input.Place;
import org.flitchbook.measure.Quantity;
import org.flitchbook.sheet.Sheet;
import org.flitchbook.sheet.What;

/**
 * One row of a sheet that can be used.
 *
 * @param lot empty where the entry is of no lot (an instrument's check)
 * @param value as written; a number's text without its unit
 * @param quantity the value with its unit, where it is one
 * @param by initials, empty where they are missing
 * @param entered when it was typed, where the sheet says so
 * @param corrects {@code file:line} of the entry that this one replaces, or empty
 * @param other the columns that the sheet has beyond the known ones, in the sheet's order, and the
 *     unit where it belongs to no quantity
 */
public record Entry(
    Place place,
    Sheet sheet,
    String lot,
    String piece,
    Moment time,
    What what,
    String item,
    String value,
    Optional<Quantity> quantity,
    String by,
    String instrument,
    String note,
    Optional<Moment> entered,
    String corrects,
    Map<String, String> other) {

  public Entry {
    other = Collections.unmodifiableMap(new LinkedHashMap<>(other));
  }

  public boolean is(What other) {
    return what == other;
  }

  /** The quantity of an entry whose shape has one. */
  public Quantity amount() {
    return quantity.orElseThrow(() -> new AssertionError(place + " has no quantity"));
  }

  /** The value with its unit as written. */
  public String shown() {
    return quantity.map(q -> value + " " + q.unit()).orElse(value).strip();
  }
}
