package org.flitchbook.reading;

import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.time.format.ResolverStyle;
import java.util.Locale;
import java.util.Optional;

/**
 * Reads the times of a log by the pattern that {@code logs.json} states (the letters of {@link
 * DateTimeFormatter}; {@code y} is taken as the year of the calendar).
 */
record LogClock(String pattern, DateTimeFormatter formatter, ZoneId zone) {

  static Optional<LogClock> of(String pattern, ZoneId zone) {
    try {
      DateTimeFormatter formatter =
          new DateTimeFormatterBuilder()
              .parseCaseInsensitive()
              .appendPattern(pattern.replace('y', 'u'))
              .toFormatter(Locale.ROOT)
              .withResolverStyle(ResolverStyle.STRICT);
      LocalDateTime probe = LocalDateTime.of(2026, 2, 16, 9, 5, 7);
      LocalDateTime back = LocalDateTime.parse(formatter.format(probe), formatter);
      return back.toLocalDate().equals(probe.toLocalDate())
          ? Optional.of(new LogClock(pattern, formatter, zone))
          : Optional.empty();
    } catch (DateTimeException | IllegalArgumentException noPattern) {
      return Optional.empty();
    }
  }

  Optional<LocalDateTime> read(String text) {
    try {
      return Optional.of(LocalDateTime.parse(text, formatter));
    } catch (DateTimeException notSuchATime) {
      return Optional.empty();
    }
  }

  /** A log that writes no seconds may have read up to a minute later. */
  long precisionMillis() {
    return pattern.indexOf('s') < 0 ? 60_000 : 0;
  }
}
