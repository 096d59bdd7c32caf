package org.flitchbook.reading;

import static org.flitchbook.message.Message.say;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.flitchbook.message.Message;

/** Reads the times of hand entries: ISO 8601, a space instead of the T allowed. */
final class Times {

  private static final Pattern WRITTEN =
      Pattern.compile(
          "(\\d{4}-\\d{2}-\\d{2})[T"
              + " ](\\d{2}:\\d{2})(:\\d{2}(?:\\.\\d{1,9})?)?(Z|[+-]\\d{2}:\\d{2})?");

  private static final Pattern CLOCK_ONLY = Pattern.compile("\\d{1,2}:\\d{2}(:\\d{2})?.*");

  private static final Message SUCH_AS =
      say("reading.time.such-as", "a date and time such as 2026-02-16 09:05");

  private Times() {}

  /** A time, or what is wrong with it. */
  sealed interface Result {
    record Read(Moment moment) implements Result {}

    /** What is wrong. */
    record Wrong(String rule, Message found, Message expected) implements Result {}
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
      return new Result.Wrong(
          "time", Message.of(text), say("reading.time.existing", "a date and time that exist"));
    }
  }

  private static Result inZone(LocalDateTime local, ZoneId zone, String text, boolean seconds) {
    List<ZoneOffset> offsets = zone.getRules().getValidOffsets(local);
    return switch (offsets.size()) {
      case 1 -> read(local.toInstant(offsets.get(0)), seconds);
      case 0 ->
          new Result.Wrong(
              "spring clock change",
              say(
                  "reading.clock.skipped",
                  "{0}, which the clock skipped in {1}",
                  text,
                  zone.getId()),
              say("reading.clock.shown", "a time that was on the clock"));
      default ->
          new Result.Wrong(
              "autumn clock change",
              say(
                  "reading.clock.twice",
                  "{0}, which the clock showed twice in {1}",
                  text,
                  zone.getId()),
              say(
                  "reading.clock.offset",
                  "an offset behind it, {0} or {1}",
                  offsets.get(0).getId(),
                  offsets.get(1).getId()));
    };
  }

  private static Result read(Instant instant, boolean seconds) {
    return new Result.Read(seconds ? Moment.exactly(instant) : Moment.inMinute(instant));
  }

  private static Result notATime(String text) {
    if (text.isEmpty()) {
      return new Result.Wrong("time", say("reading.time.none", "no time"), SUCH_AS);
    }
    return CLOCK_ONLY.matcher(text).matches()
        ? new Result.Wrong(
            "time",
            say("reading.time.no-date", "{0}, a time without a date", text),
            say("reading.time.like", "2026-02-16 09:05 or the like"))
        : new Result.Wrong("time", Message.of(text), SUCH_AS);
  }
}
