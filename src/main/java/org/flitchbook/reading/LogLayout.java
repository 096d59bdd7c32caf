package org.flitchbook.reading;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.flitchbook.input.Place;
import org.flitchbook.measure.Unit;
import org.flitchbook.sheet.What;
import org.flitchbook.table.Layout;

/**
 * How the logs whose name fits are to be read, as {@code logs.json} states it.
 *
 * @param files a name with {@code *} for any letters and {@code ?} for one
 */
record LogLayout(
    Place place,
    String files,
    Layout layout,
    char decimalMark,
    Time time,
    String instrument,
    List<ValueColumn> columns) {

  boolean fits(String baseName) {
    StringBuilder pattern = new StringBuilder();
    for (int i = 0; i < files.length(); i++) {
      char letter = files.charAt(i);
      pattern.append(
          switch (letter) {
            case '*' -> ".*";
            case '?' -> ".";
            default -> Pattern.quote(String.valueOf(letter));
          });
    }
    return Pattern.matches(pattern.toString(), baseName);
  }

  /**
   * The log's clock.
   *
   * @param columns the columns whose texts, joined by a space, are the time
   * @param correction what a person found it to be off by
   */
  record Time(
      List<String> columns, LogClock clock, boolean newestFirst, Optional<Correction> correction) {

    /** For a diagnostic: the heading's words. */
    String column() {
      return String.join(" ", columns);
    }

    Duration off() {
      return correction.map(Correction::by).orElse(Duration.ZERO);
    }
  }

  /**
   * What is added to each time of a log.
   *
   * @param because how the clock was found to be off
   */
  record Correction(Place place, Duration by, String because) {}

  /**
   * A column of values.
   *
   * @param from the first and {@code until} the last time on the log's clock for which this holds
   */
  record ValueColumn(
      Place place,
      String column,
      What what,
      Unit unit,
      String item,
      List<String> lots,
      String placeId,
      Optional<Seat> seat,
      Optional<Instant> from,
      Optional<Instant> until) {

    boolean holdsAt(long millis) {
      return (from.isEmpty() || from.get().toEpochMilli() <= millis)
          && (until.isEmpty() || until.get().toEpochMilli() >= millis);
    }
  }

  /** The zone in which the log's clock runs. */
  ZoneId zone() {
    return time.clock().zone();
  }
}
