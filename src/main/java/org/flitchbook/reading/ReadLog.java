package org.flitchbook.reading;

import java.time.Duration;
import org.flitchbook.input.Severity;
import org.flitchbook.message.Message;
import org.flitchbook.practice.Practice;

/**
 * The rows of one log, and what is known of them once all are read.
 *
 * @param precision how late a reading can have been after its time, in milliseconds
 */
record ReadLog(
    String name,
    LogsFile.LogLayout layout,
    Practice practice,
    long precision,
    LogRows rows,
    RowFaults faults) {

  LogClock clock() {
    return layout.clock();
  }

  LogTime time() {
    return layout.time();
  }

  /** What is added to each time, in milliseconds. */
  long correction() {
    return time().offset().orElse(Duration.ZERO).toMillis();
  }

  long at(int row) {
    return rows.at(row);
  }

  /** A fault of the time of one row. */
  void add(String rule, Severity severity, int row, Message found, Message expected) {
    faults.add(rule, severity, rows.line(row), time().column(), found, expected);
  }
}
