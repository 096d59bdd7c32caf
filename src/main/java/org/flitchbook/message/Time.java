package org.flitchbook.message;

import java.time.Instant;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;

/**
 * A time on a clock of the wall.
 *
 * @param form how much of it is printed; JSON has all of it
 */
public record Time(OffsetDateTime at, Form form) implements Argument {

  /** How much of a time is printed. */
  public enum Form {
    /** {@code 14:05}, or {@code 14:05:30}. */
    CLOCK,
    /** {@code 2026-02-24}. */
    DAY,
    /** {@code 2026-02-24 14:05}, or with seconds. */
    DAY_AND_CLOCK
  }

  public static Time clock(Instant time, ZoneId zone) {
    return new Time(time.atZone(zone).toOffsetDateTime(), Form.CLOCK);
  }

  public static Time day(Instant time, ZoneId zone) {
    return new Time(time.atZone(zone).toOffsetDateTime(), Form.DAY);
  }

  public static Time dayAndClock(Instant time, ZoneId zone) {
    return new Time(time.atZone(zone).toOffsetDateTime(), Form.DAY_AND_CLOCK);
  }

  @Override
  public String in(Language language) {
    LocalDateTime local = at.toLocalDateTime();
    return switch (form) {
      case CLOCK -> local.toLocalTime().toString();
      case DAY -> local.toLocalDate().toString();
      case DAY_AND_CLOCK -> local.toLocalDate() + " " + local.toLocalTime();
    };
  }

  @Override
  public Object json() {
    return at.toString();
  }
}
