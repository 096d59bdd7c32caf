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
import java.time.format.TextStyle;
import java.time.temporal.ChronoField;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.flitchbook.message.Message;

/**
 * Times written out, by a pattern in the letters of {@link DateTimeFormatter}; {@code y} is taken
 * as the year of the calendar, and {@code S} behind a point or a comma as a fraction of however
 * many digits.
 *
 * @param months how months are written as words; empty where they are not
 * @param standing what a time means
 * @param toTheMinute whether a reading can have been up to a minute later than written
 */
record WrittenClock(
    String pattern,
    DateTimeFormatter formatter,
    ZoneId zone,
    Optional<TextStyle> months,
    Standing standing,
    boolean toTheMinute)
    implements LogClock {

  /** What says what a time means. */
  enum Standing {
    /** The zone of the logger's clock. */
    LOCAL,
    /** The offset in each time. */
    OFFSET,
    /** A word of the pattern: UTC, GMT or Z. */
    UTC
  }

  private static final Pattern HALF_OF_DAY =
      Pattern.compile("(?i)(?<![a-z])([ap])\\.?\\s?m(?![a-z])\\.?");
  private static final Pattern UTC = Pattern.compile("(?i)(?<![a-z])(utc|gmt|z)(?![a-z])");
  private static final Pattern FRACTION = Pattern.compile("(?<=[.,])S+");
  private static final Pattern MAYBE_SECONDS = Pattern.compile("\\[[^\\]]*s");
  private static final Pattern SERIAL = Pattern.compile("[234]\\d{4}([.,]\\d+)?");

  private static final OffsetDateTime PROBE =
      OffsetDateTime.of(2026, 2, 16, 21, 5, 7, 0, ZoneOffset.ofHoursMinutes(5, 45));

  /** Empty where the pattern is none, or leaves the day, the half of it or the minute open. */
  static Optional<LogClock> of(String pattern, ZoneId zone) {
    try {
      List<String> parts = List.of(pattern.split("'", -1));
      String letters = every(parts, 0);
      WrittenClock clock =
          new WrittenClock(
              pattern, formatter(parts), zone, months(letters), standing(parts), false);
      OffsetDateTime back = clock.time(clock.formatter.format(PROBE));
      boolean toTheMinute =
          back.getSecond() != PROBE.getSecond() || MAYBE_SECONDS.matcher(letters).find();
      OffsetDateTime there =
          clock.standing == Standing.OFFSET ? back : back.withOffsetSameLocal(PROBE.getOffset());
      return there.truncatedTo(MINUTES).equals(PROBE.truncatedTo(MINUTES))
          ? Optional.of(clock.toTheMinute(toTheMinute))
          : Optional.empty();
    } catch (DateTimeException | IllegalArgumentException noPattern) {
      return Optional.empty();
    }
  }

  /** The letters of a pattern, or what stands in quotes. */
  private static String every(List<String> parts, int from) {
    return IntStream.iterate(from, i -> i < parts.size(), i -> i + 2)
        .mapToObj(parts::get)
        .collect(Collectors.joining(" "));
  }

  private static Standing standing(List<String> parts) {
    if (every(parts, 0).matches(".*[xXZO].*")) {
      return Standing.OFFSET;
    }
    return UTC.matcher(every(parts, 1)).find() ? Standing.UTC : Standing.LOCAL;
  }

  private static Optional<TextStyle> months(String letters) {
    boolean worded = letters.matches(".*[ML]{3}.*") && !letters.contains("E");
    return Optional.of(letters.matches(".*[ML]{4}.*") ? TextStyle.FULL : TextStyle.SHORT)
        .filter(style -> worded);
  }

  /**
   * Of the parts between the quotes, letters and words by turns; nothing between two quotes is one
   * of them.
   */
  private static DateTimeFormatter formatter(List<String> parts) {
    if (parts.size() % 2 == 0) {
      throw new IllegalArgumentException("a quote that never closes");
    }
    DateTimeFormatterBuilder builder = new DateTimeFormatterBuilder().parseCaseInsensitive();
    for (int i = 0; i < parts.size(); i++) {
      boolean inside = i > 0 && i < parts.size() - 1;
      if (inside && parts.get(i).isEmpty()) {
        builder.appendLiteral("'");
      } else if (i % 2 == 1) {
        builder.appendLiteral(parts.get(i));
      } else {
        letters(builder, parts.get(i).replace('y', 'u'));
      }
    }
    return builder.toFormatter(Locale.ENGLISH).withResolverStyle(ResolverStyle.STRICT);
  }

  private static void letters(DateTimeFormatterBuilder builder, String letters) {
    int from = 0;
    for (Matcher fraction = FRACTION.matcher(letters); fraction.find(); from = fraction.end()) {
      builder.appendPattern(letters.substring(from, fraction.start()));
      builder.appendFraction(ChronoField.NANO_OF_SECOND, 1, 9, false);
    }
    builder.appendPattern(letters.substring(from));
  }

  private WrittenClock toTheMinute(boolean coarse) {
    return new WrittenClock(pattern, formatter, zone, months, standing, coarse);
  }

  /** Without an offset in it, what the clock says as if it were UTC. */
  private OffsetDateTime time(String text) {
    String plain = HALF_OF_DAY.matcher(text).replaceAll("$1m");
    String written = months.map(style -> MonthWords.inEnglish(plain, style)).orElse(plain);
    return standing == Standing.OFFSET
        ? OffsetDateTime.parse(written, formatter)
        : LocalDateTime.parse(written, formatter).atOffset(ZoneOffset.UTC);
  }

  @Override
  public boolean isLocal() {
    return standing == Standing.LOCAL;
  }

  @Override
  public OptionalLong read(String text) {
    try {
      return OptionalLong.of(time(text).toInstant().toEpochMilli());
    } catch (DateTimeException notSuchATime) {
      return OptionalLong.empty();
    }
  }

  @Override
  public String shown(long time) {
    Instant instant = Instant.ofEpochMilli(time);
    return formatter.format(
        standing == Standing.OFFSET ? instant.atZone(zone) : instant.atOffset(ZoneOffset.UTC));
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
