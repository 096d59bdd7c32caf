package org.flitchbook.input;

import java.time.Instant;

/**
 * Readings of one log column that a fault is about: those from one time to another, both counted;
 * or a time between two of them.
 *
 * @param origin the log's file and column, without a line
 * @param standing how these readings may count
 * @param least of several readings of one time it is about those of at least this level, and of at
 *     most {@code most}
 */
public record Stretch(
    Place origin, Instant from, Instant until, Standing standing, long least, long most) {

  /** How the readings of a stretch may count. */
  public enum Standing {
    /** They may be right or wrong: judged with them and without them, and the worse counts. */
    IN_DOUBT,
    /** They are no readings of anything; the log was silent there. */
    NO_READING,
    /** The probe was not where it should be; the log was silent, and nothing held on meanwhile. */
    PROBE_OUT,
    /** Nothing was read, so that nothing is left out. */
    SILENCE
  }

  public Stretch {
    if (origin.line() != 0 || origin.column().isEmpty()) {
      throw new IllegalArgumentException(origin + " is no column of a log");
    }
    if (until.isBefore(from)) {
      throw new IllegalArgumentException(until + " is before " + from);
    }
  }

  /** Whatever their levels. */
  public Stretch(Place origin, Instant from, Instant until, Standing standing) {
    this(origin, from, until, standing, Long.MIN_VALUE, Long.MAX_VALUE);
  }

  /** The same, but only readings of these levels, both counted. */
  public Stretch ofLevels(long lowest, long highest) {
    return new Stretch(origin, from, until, standing, lowest, highest);
  }

  public boolean holds(long millis, long level) {
    return holds(millis) && level >= least && level <= most;
  }

  public boolean holds(long millis) {
    return millis >= from.toEpochMilli() && millis <= until.toEpochMilli();
  }

  /** Whether another stretch of the same column lies wholly inside this one. */
  public boolean covers(Stretch other) {
    return origin.equals(other.origin) && !other.from.isBefore(from) && !other.until.isAfter(until);
  }

  /** Whether it has a time in common with another stretch of the same column. */
  public boolean meets(Stretch other) {
    return origin.equals(other.origin) && !other.until.isBefore(from) && !other.from.isAfter(until);
  }
}
