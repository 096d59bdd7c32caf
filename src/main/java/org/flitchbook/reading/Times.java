package org.flitchbook.reading;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.flitchbook.words.Words;

/** Reads the times of hand entries: ISO 8601, a space instead of the T allowed. */
final class Times {

  private static final Pattern WRITTEN =
      Pattern.compile(
          "(\\d{4}-\\d{2}-\\d{2})[T ](\\d{2}:\\d{2})(:\\d{2}(?:\\.\\d{1,9})?)?(Z|[+-]\\d{2}:\\d{2})?");

  private static final Pattern CLOCK_ONLY = Pattern.compile("\\d{1,2}:\\d{2}(:\\d{2})?.*");

  private static final String AS_WRITTEN = "reading.as-written";

  private Times() {}

  /** A time, or what is wrong with it. */
  sealed interface Result {
    record Read(Moment moment) implements Result {}

    /**
     * What is wrong.
     *
     * @param found and {@code expected}: keys of what is told
     * @param values put into both
     */
    record Wrong(String rule, String found, String expected, List<Object> values)
        implements Result {

      static Wrong of(String rule, String found, String expected, Object... values) {
        return new Wrong(rule, found, expected, List.of(values));
      }

      String found(Words words) {
        return words.say(found, values.toArray());
      }

      String expected(Words words) {
        return words.say(expected, values.toArray());
      }
    }
  }

  static Result read(String text, ZoneId zone) {
    Matcher written = WRITTEN.matcher(text);
    if (!written.matches()) {
      return notATime(text);
    }
    boolean seconds = written.group(3) != null;
    String local = written.group(1) + "T" + written.group(2) + (seconds ? written.group(3) : "");
    try {
      return written.group(4) != null
          ? read(OffsetDateTime.parse(local + written.group(4)).toInstant(), seconds)
          : inZone(LocalDateTime.parse(local), zone, text, seconds);
    } catch (DateTimeException noSuchDate) {
      return Result.Wrong.of("time", AS_WRITTEN, "reading.time.existing", text);
    }
  }

  private static Result inZone(LocalDateTime local, ZoneId zone, String text, boolean seconds) {
    List<ZoneOffset> offsets = zone.getRules().getValidOffsets(local);
    return switch (offsets.size()) {
      case 1 -> read(local.toInstant(offsets.get(0)), seconds);
      case 0 ->
          Result.Wrong.of(
              "spring clock change", "reading.clock.skipped", "reading.clock.shown", text, zone);
      default ->
          Result.Wrong.of(
              "autumn clock change",
              "reading.clock.twice",
              "reading.clock.offset",
              text,
              zone,
              offsets.get(0),
              offsets.get(1));
    };
  }

  private static Result read(Instant instant, boolean seconds) {
    return new Result.Read(seconds ? Moment.exactly(instant) : Moment.inMinute(instant));
  }

  private static Result notATime(String text) {
    if (text.isEmpty()) {
      return Result.Wrong.of("time", "reading.time.none", "reading.time.such-as");
    }
    return CLOCK_ONLY.matcher(text).matches()
        ? Result.Wrong.of("time", "reading.time.no-date", "reading.time.like", text)
        : Result.Wrong.of("time", AS_WRITTEN, "reading.time.such-as", text);
  }
}
