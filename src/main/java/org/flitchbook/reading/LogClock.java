package org.flitchbook.reading;

import java.time.Instant;
import java.time.ZoneId;
import java.util.Optional;
import java.util.OptionalLong;
import org.flitchbook.message.Message;

/**
 * Reads the times of one log as {@code logs.json} states them: written out, counted as a number, or
 * as hours and minutes run.
 */
public sealed interface LogClock permits WrittenClock, CountedClock, CountedClock.Run {

  /** The zone in which the log's clock runs, and in which times of this log are shown. */
  ZoneId zone();

  /**
   * The time of a cell, in milliseconds since 1970: of the clock on the wall where {@link #isLocal}
   * says so, else of the world.
   */
  OptionalLong read(String text);

  /** Whether the times still need the zone's offset. */
  default boolean isLocal() {
    return false;
  }

  /** A time on the clock's own count as the log would write it. */
  default String shown(long time) {
    return Instant.ofEpochMilli(time).atZone(zone()).toOffsetDateTime().toString();
  }

  /** A time of the world as the log's clock would write it. */
  default String onTheClock(long at) {
    Instant instant = Instant.ofEpochMilli(at);
    return shown(
        isLocal() ? at + zone().getRules().getOffset(instant).getTotalSeconds() * 1000L : at);
  }

  /** For a diagnostic: what a cell should look like. */
  Message expected();

  /** What often lies behind a cell that is no time of this clock. */
  default Optional<Message> hint(String text) {
    return Optional.empty();
  }

  /**
   * How late a reading can have been after its time.
   *
   * @param places the most digits that the log has behind the decimal mark of a time
   */
  long precisionMillis(int places);
}
