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

/** Reads the times of hand entries: ISO 8601, a space instead of the T allowed. */
final class Times {

  private static final Pattern WRITTEN =
      Pattern.compile(
          "(\\d{4}-\\d{2}-\\d{2})[T ](\\d{2}:\\d{2})(:\\d{2}(?:\\.\\d{1,9})?)?(Z|[+-]\\d{2}:\\d{2})?");

  private static final Pattern CLOCK_ONLY = Pattern.compile("\\d{1,2}:\\d{2}(:\\d{2})?.*");

  private Times() {}

  /** A time, or what is wrong with it. */
  sealed interface Result {
    record Read(Moment moment) implements Result {}

    record Wrong(String rule, String found, String expected) implements Result {}
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
      return new Result.Wrong("time", text, "a date and time that exist");
    }
  }

  private static Result inZone(LocalDateTime local, ZoneId zone, String text, boolean seconds) {
    List<ZoneOffset> offsets = zone.getRules().getValidOffsets(local);
    return switch (offsets.size()) {
      case 1 -> read(local.toInstant(offsets.get(0)), seconds);
      case 0 ->
          new Result.Wrong(
              "spring clock change",
              text + ", which the clock skipped in " + zone,
              "a time that was on the clock");
      default ->
          new Result.Wrong(
              "autumn clock change",
              text + ", which the clock showed twice in " + zone,
              "an offset behind it, " + offsets.get(0) + " or " + offsets.get(1));
    };
  }

  private static Result read(Instant instant, boolean seconds) {
    return new Result.Read(seconds ? Moment.exactly(instant) : Moment.inMinute(instant));
  }

  private static Result notATime(String text) {
    if (text.isEmpty()) {
      return new Result.Wrong("time", "no time", "a date and time such as 2026-02-16 09:05");
    }
    return CLOCK_ONLY.matcher(text).matches()
        ? new Result.Wrong("time", text + ", a time without a date", "2026-02-16 09:05 or the like")
        : new Result.Wrong("time", text, "a date and time such as 2026-02-16 09:05");
  }
}
