package org.flitchbook.reading;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * How the logs whose name fits are to be read, as {@code logs.json} states it.
 *
 * @param columns those of which it is known what they hold
 */
record LogLayout(LogsFile.Log log, LogClock clock, List<ValueColumn> columns) {

  /** By a name with {@code *} for any letters and {@code ?} for one. */
  boolean fits(String baseName) {
    String quoted = Pattern.quote(log.files());
    return baseName.matches(quoted.replace("*", "\\E.*\\Q").replace("?", "\\E.\\Q"));
  }

  LogTime time() {
    return log.time();
  }

  /**
   * A column of values.
   *
   * @param series what is stated of it, without readings
   * @param from the first and {@code until} the last time on the log's clock for which this holds
   */
  record ValueColumn(Series series, Optional<Instant> from, Optional<Instant> until) {

    String column() {
      return series.column();
    }

    boolean holdsAt(long millis) {
      return (from.isEmpty() || from.get().toEpochMilli() <= millis)
          && (until.isEmpty() || until.get().toEpochMilli() >= millis);
    }
  }
}
