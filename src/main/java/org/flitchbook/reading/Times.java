package org.flitchbook.reading;

import static org.flitchbook.message.Message.say;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.flitchbook.message.Message;

/**
 * Reads a time of a hand entry: ISO 8601, a space instead of the T allowed.
 *
 * @param zone for a time without an offset
 * @param complaint takes what is wrong with it
 */
record Times(String text, ZoneId zone, Complaint complaint) {

  private static final Pattern WRITTEN =
      Pattern.compile(
          "(\\d{4}-\\d{2}-\\d{2})[T"
              + " ](\\d{2}:\\d{2})(:\\d{2}(?:\\.\\d{1,9})?)?(Z|[+-]\\d{2}:\\d{2})?");

  private static final Pattern CLOCK_ONLY = Pattern.compile("\\d{1,2}:\\d{2}(:\\d{2})?.*");

  /** Takes what is wrong with one cell or key. */
  interface Complaint {
    void about(String ruleOrKey, Message found, Message expected);
  }

  /** Empty where a complaint says why. */
  static Optional<Moment> read(String text, ZoneId zone, Complaint complaint) {
    return new Times(text, zone, complaint).moment();
  }

  private Optional<Moment> moment() {
    Matcher written = WRITTEN.matcher(text);
    if (!written.matches()) {
      return notATime();
    }
    boolean seconds = written.group(3) != null;
    String local = written.group(1) + "T" + written.group(2) + (seconds ? written.group(3) : "");
    try {
      Optional<Instant> instant =
          written.group(4) != null
              ? Optional.of(OffsetDateTime.parse(local + written.group(4)).toInstant())
              : inZone(LocalDateTime.parse(local));
      return instant.map(seconds ? Moment::exactly : Moment::inMinute);
    } catch (DateTimeException noSuchDate) {
      return wrong(
          "time", Message.of(text), say("reading.time.existing", "a date and time that exist"));
    }
  }

  private Optional<Moment> notATime() {
    if (CLOCK_ONLY.matcher(text).matches()) {
      return wrong(
          "time",
          say("reading.time.no-date", "{0}, a time without a date", text),
          say("reading.time.like", "2026-02-16 09:05 or the like"));
    }
    return wrong(
        "time",
        text.isEmpty() ? say("reading.time.none", "no time") : Message.of(text),
        say("reading.time.such-as", "a date and time such as 2026-02-16 09:05"));
  }

  private Optional<Instant> inZone(LocalDateTime local) {
    List<ZoneOffset> offsets = zone.getRules().getValidOffsets(local);
    return switch (offsets.size()) {
      case 1 -> Optional.of(local.toInstant(offsets.get(0)));
      case 0 ->
          wrong(
              "spring clock change",
              say("reading.clock.skipped", "{0}, which the clock skipped in {1}", text, zone),
              say("reading.clock.shown", "a time that was on the clock"));
      default ->
          wrong(
              "autumn clock change",
              say("reading.clock.twice", "{0}, which the clock showed twice in {1}", text, zone),
              say(
                  "reading.clock.offset",
                  "an offset behind it, {0} or {1}",
                  offsets.get(0),
                  offsets.get(1)));
    };
  }

  private <T> Optional<T> wrong(String rule, Message found, Message expected) {
    complaint.about(rule, found, expected);
    return Optional.empty();
  }
}
