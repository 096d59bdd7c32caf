package org.flitchbook.lot;

import org.flitchbook.measure.Level;
import org.flitchbook.reading.Entry;

/** A hand reading with its instrument's spread. */
record HandReading(Entry entry, Probe.Spread spread) {

  long at() {
    return entry.time().earliest().toEpochMilli();
  }

  long level() {
    return Level.of(entry.amount());
  }
}
