package org.flitchbook.lot;

import org.flitchbook.measure.Level;
import org.flitchbook.reading.Entry;

/** A hand reading, its level, and its instrument's spread. */
record HandReading(Entry entry, long level, Probe.Spread spread) {

  static HandReading of(Entry entry, Probe.Spread spread) {
    return new HandReading(entry, Level.of(entry.amount()), spread);
  }

  long at() {
    return entry.time().earliest().toEpochMilli();
  }
}
