package org.flitchbook.reading;

import java.time.LocalDateTime;
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
    TimeColumns time,
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
   * @param columns the columns whose texts, joined by a space, are the time
   */
  record TimeColumns(List<String> columns, LogClock clock) {}

  /**
   * @param from the first and {@code until} the last time of the log's clock for which this holds
   */
  record ValueColumn(
      Place place,
      String column,
      What what,
      Unit unit,
      String item,
      List<String> lots,
      String placeId,
      Optional<LocalDateTime> from,
      Optional<LocalDateTime> until) {

    boolean holdsAt(LocalDateTime time) {
      return from.filter(time::isBefore).isEmpty() && until.filter(time::isAfter).isEmpty();
    }
  }

  /** The zone in which the log's clock runs. */
  ZoneId zone() {
    return time.clock().zone();
  }
}
