package org.flitchbook.reading;

import java.time.ZoneId;

/**
 * How the entries of a book are written by hand, as its plan states.
 *
 * @param zone for times without an offset
 * @param decimalMark a point or a comma
 */
public record Hand(ZoneId zone, char decimalMark) {

  public Hand {
    if (decimalMark != '.' && decimalMark != ',') {
      throw new IllegalArgumentException("decimal mark " + decimalMark);
    }
  }
}
