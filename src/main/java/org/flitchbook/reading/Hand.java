package org.flitchbook.reading;

import java.time.ZoneId;
import org.flitchbook.words.Words;

/**
 * How the entries of a book are written by hand, as its plan states.
 *
 * @param zone for times without an offset
 * @param decimalMark a point or a comma
 * @param words in which the faults of the readings are told
 */
public record Hand(ZoneId zone, char decimalMark, Words words) {

  public Hand {
    if (decimalMark != '.' && decimalMark != ',') {
      throw new IllegalArgumentException("decimal mark " + decimalMark);
    }
  }
}
