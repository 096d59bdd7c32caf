package org.flitchbook.reading;

import java.time.ZoneId;
import org.flitchbook.practice.Practice;

/**
 * How the entries of a book are written by hand, as its plan states, and its readings taken.
 *
 * @param zone for times without an offset
 * @param decimalMark a point or a comma
 * @param practice the numbers that decide how a log is read
 */
public record Hand(ZoneId zone, char decimalMark, Practice practice) {

  public Hand {
    if (decimalMark != '.' && decimalMark != ',') {
      throw new IllegalArgumentException("decimal mark " + decimalMark);
    }
  }
}
