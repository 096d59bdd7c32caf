package org.flitchbook.reading;

import java.time.Duration;
import java.time.Instant;

/**
 * When something happened, as closely as it was written down: a time written to the minute lies
 * anywhere in that minute, and a sum counts its worst second.
 */
public record Moment(Instant earliest, Instant latest) {

  public Moment {
    if (latest.isBefore(earliest)) {
      throw new IllegalArgumentException(latest + " is before " + earliest);
    }
  }

  public static Moment exactly(Instant instant) {
    return new Moment(instant, instant);
  }

  /** Somewhere in the minute that begins there. */
  public static Moment inMinute(Instant begin) {
    return new Moment(begin, begin.plus(Duration.ofMinutes(1)));
  }

  /** The time as written, which is its earliest. */
  public Instant written() {
    return earliest;
  }

  public boolean isBefore(Moment other) {
    return earliest.isBefore(other.earliest);
  }

  /** The longest time that can lie between this and a later moment. */
  public Duration longestTo(Moment later) {
    return Duration.between(earliest, later.latest);
  }

  /** The shortest time that can lie between this and a later moment; below 0 where they overlap. */
  public Duration shortestTo(Moment later) {
    return Duration.between(latest, later.earliest);
  }

  /** As written, minute from minute. */
  public Duration writtenTo(Moment later) {
    return Duration.between(earliest, later.earliest);
  }
}
