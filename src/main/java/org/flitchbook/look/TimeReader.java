package org.flitchbook.look;

import java.util.Optional;
import java.util.OptionalLong;
import org.flitchbook.reading.LogClock;
import org.flitchbook.reading.Readings;

/** A clock, as an entry of {@code logs.json} states it, and the times that it has read. */
final class TimeReader {

  static final String PATTERN = "pattern";
  static final String ELAPSED = "elapsed";
  static final String EPOCH = "epoch";
  static final String SERIAL = "serial";

  /** Stands in for the start that a count of seconds, hours and minutes needs. */
  static final String START = "2050-01-01 00:00";

  final String key;
  final TimeSteps steps = new TimeSteps();

  /** How many times it could not read. */
  int missed;

  private final String lenient;
  private String value;
  private Optional<LogClock> clock;

  /**
   * A reader that has read nothing yet.
   *
   * @param lenient what is stated instead once a time needs it
   */
  TimeReader(String key, String value, String lenient) {
    this.key = key;
    this.value = value;
    this.lenient = lenient;
    this.clock = clock(value);
  }

  private Optional<LogClock> clock(String stated) {
    return Readings.clock(key, stated, START);
  }

  String value() {
    return value;
  }

  /** Whether it reads that time, which is then the next of its steps. */
  boolean take(String text, int line) {
    OptionalLong at = read(clock, text);
    if (at.isEmpty() && !value.equals(lenient)) {
      Optional<LogClock> other = clock(lenient);
      at = read(other, text);
      if (at.isPresent()) {
        value = lenient;
        clock = other;
      }
    }
    missed += at.isEmpty() ? 1 : 0;
    at.ifPresent(time -> steps.take(Math.floorDiv(time + 500, 1000L), line));
    return at.isPresent();
  }

  private OptionalLong read(Optional<LogClock> by, String text) {
    String number = key.equals(PATTERN) ? text : text.replace(',', '.');
    return by.map(each -> each.read(number)).orElse(OptionalLong.empty());
  }
}
