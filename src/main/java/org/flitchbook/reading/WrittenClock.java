package org.flitchbook.reading;

import static java.time.temporal.ChronoUnit.MINUTES;
import static org.flitchbook.message.Message.say;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.time.format.ResolverStyle;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.regex.Pattern;
import org.flitchbook.message.Message;

/**
 * Times written out, by a pattern in the letters of {@link DateTimeFormatter}; {@code y} is taken
 * as the year of the calendar.
 *
 * @param isLocal false where the pattern has an offset, so that each time has one meaning
 * @param toTheMinute whether a reading can have been up to a minute later than written
 */
record WrittenClock(
    String pattern, DateTimeFormatter formatter, ZoneId zone, boolean isLocal, boolean toTheMinute)
    implements LogClock {

  private static final Pattern HALF_OF_DAY = Pattern.compile("(?i)[ap]\\.?m");
  private static final Pattern SERIAL = Pattern.compile("[234]\\d{4}([.,]\\d+)?");

  private static final OffsetDateTime PROBE =
      OffsetDateTime.of(2026, 2, 16, 21, 5, 7, 0, ZoneOffset.ofHoursMinutes(5, 45));

  /** Empty where the pattern is none, or leaves the day, the half of it or the minute open. */
  static Optional<LogClock> of(String pattern, ZoneId zone) {
    try {
      DateTimeFormatter formatter =
          new DateTimeFormatterBuilder()
              .parseCaseInsensitive()
              .appendPattern(withCalendarYear(pattern))
              .toFormatter(Locale.ROOT)
              .withResolverStyle(ResolverStyle.STRICT);
      boolean offset = unquoted(pattern).matches(".*[xXZO].*");
      OffsetDateTime back = read(formatter.format(PROBE), formatter, offset);
      return back.truncatedTo(MINUTES).equals(PROBE.truncatedTo(MINUTES))
          ? Optional.of(
              new WrittenClock(pattern, formatter, zone, !offset, toTheMinute(pattern, back)))
          : Optional.empty();
    } catch (DateTimeException | IllegalArgumentException noPattern) {
      return Optional.empty();
    }
  }

  /** Where the pattern has no offset, the probe's is taken. */
  private static OffsetDateTime read(String text, DateTimeFormatter formatter, boolean offset) {
    return offset
        ? OffsetDateTime.parse(text, formatter)
        : LocalDateTime.parse(text, formatter).atOffset(PROBE.getOffset());
  }

  /** Words in quotes stay as they are. */
  private static String withCalendarYear(String pattern) {
    String[] parts = pattern.split("'", -1);
    for (int i = 0; i < parts.length; i += 2) {
      parts[i] = parts[i].replace('y', 'u');
    }
    return String.join("'", parts);
  }

  private static String unquoted(String pattern) {
    return pattern.replaceAll("'[^']*'", "");
  }

  /** A log that writes no seconds, or not always, may have read up to a minute later. */
  private static boolean toTheMinute(String pattern, OffsetDateTime back) {
    return back.getSecond() != PROBE.getSecond() || pattern.indexOf('[') >= 0;
  }

  @Override
  public OptionalLong read(String text) {
    try {
      return OptionalLong.of(
          isLocal
              ? LocalDateTime.parse(text, formatter).toInstant(ZoneOffset.UTC).toEpochMilli()
              : OffsetDateTime.parse(text, formatter).toInstant().toEpochMilli());
    } catch (DateTimeException notSuchATime) {
      return OptionalLong.empty();
    }
  }

  @Override
  public String shown(long time) {
    Instant instant = Instant.ofEpochMilli(time);
    return isLocal
        ? formatter.format(LocalDateTime.ofInstant(instant, ZoneOffset.UTC))
        : formatter.format(instant.atZone(zone));
  }

  @Override
  public Message expected() {
    return Message.of(pattern);
  }

  @Override
  public Optional<Message> hint(String text) {
    if (SERIAL.matcher(text).matches()) {
      return Optional.of(
          say(
              "reading.hint.serial",
              "the days of a spreadsheet are stated as \"serial\" in logs.json"));
    }
    return pattern.indexOf('a') >= 0 && !HALF_OF_DAY.matcher(text).find()
        ? Optional.of(say("reading.hint.half-day", "AM or PM is missing"))
        : Optional.empty();
  }

  @Override
  public long precisionMillis(int places) {
    return toTheMinute ? 60_000 : 0;
  }
}
