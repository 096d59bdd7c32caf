package org.flitchbook.reading;

import java.time.ZoneId;
import java.util.OptionalLong;
import org.flitchbook.message.Message;

/**
 * Reads the times of one log as {@code logs.json} states them: written out, counted as a number, or
 * as hours and minutes run.
 */
public sealed interface LogClock permits WrittenClock, CountedClock, RunClock {

  /** The zone in which the log's clock runs, and in which times of this log are shown. */
  ZoneId zone();

  /**
   * The time of a cell, in milliseconds since 1970: of the clock on the wall where {@link #isLocal}
   * says so, else of the world.
   */
  OptionalLong read(String text);

  /** Whether the times still need the zone's offset. */
  boolean isLocal();

  /** A time on the clock's own count as the log would write it. */
  String shown(long time);

  /** For a diagnostic: what a cell should look like. */
  Message expected();

  /**
   * How late a reading can have been after its time.
   *
   * @param places the most digits that the log has behind the decimal mark of a time
   */
  long precisionMillis(int places);
}
