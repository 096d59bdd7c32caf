package org.flitchbook.reading;

import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.time.format.ResolverStyle;
import java.time.temporal.ChronoUnit;
import java.util.Locale;
import java.util.Optional;

/**
 * Reads the times of a log by the pattern that {@code logs.json} states (the letters of {@link
 * DateTimeFormatter}; {@code y} is taken as the year of the calendar).
 *
 * @param precisionMillis how late a reading can have been after its written time
 */
record LogClock(String pattern, DateTimeFormatter formatter, ZoneId zone, long precisionMillis) {

  private static final LocalDateTime PROBE = LocalDateTime.of(2026, 2, 16, 21, 5, 7);
  private static final long A_MINUTE = 60_000;

  /** Empty where the pattern is none, or leaves the day, the half of it or the minute open. */
  static Optional<LogClock> of(String pattern, ZoneId zone) {
    try {
      DateTimeFormatter formatter =
          new DateTimeFormatterBuilder()
              .parseCaseInsensitive()
              .appendPattern(withCalendarYear(pattern))
              .toFormatter(Locale.ROOT)
              .withResolverStyle(ResolverStyle.STRICT);
      LocalDateTime back = LocalDateTime.parse(formatter.format(PROBE), formatter);
      return back.truncatedTo(ChronoUnit.MINUTES).equals(PROBE.truncatedTo(ChronoUnit.MINUTES))
          ? Optional.of(new LogClock(pattern, formatter, zone, precision(pattern, back)))
          : Optional.empty();
    } catch (DateTimeException | IllegalArgumentException noPattern) {
      return Optional.empty();
    }
  }

  /** Words in quotes stay as they are. */
  private static String withCalendarYear(String pattern) {
    String[] parts = pattern.split("'", -1);
    for (int i = 0; i < parts.length; i += 2) {
      parts[i] = parts[i].replace('y', 'u');
    }
    return String.join("'", parts);
  }

  /** A log that writes no seconds, or not always, may have read up to a minute later. */
  private static long precision(String pattern, LocalDateTime back) {
    return back.getSecond() == PROBE.getSecond() && pattern.indexOf('[') < 0 ? 0 : A_MINUTE;
  }

  Optional<LocalDateTime> read(String text) {
    try {
      return Optional.of(LocalDateTime.parse(text, formatter));
    } catch (DateTimeException notSuchATime) {
      return Optional.empty();
    }
  }
}
