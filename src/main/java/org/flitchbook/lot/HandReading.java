package org.flitchbook.lot;

import java.nio.IntBuffer;
import java.util.List;
import org.flitchbook.measure.Level;
import org.flitchbook.reading.Entry;
import org.flitchbook.reading.Samples;
import org.flitchbook.sums.Shift;

/** A hand reading with its instrument's spread. */
record HandReading(Entry entry, long level, Spread spread) {

  /** How far the true value may lie above and below a reading, in steps of a level. */
  record Spread(long up, long down) {

    long around(long level, Shift shift) {
      return switch (shift) {
        case AS_WRITTEN -> level;
        case UP -> level + up;
        case DOWN -> level - down;
      };
    }
  }

  HandReading(Entry entry, Spread spread) {
    this(entry, Level.of(entry.amount()), spread);
  }

  long at() {
    return entry.time().earliest().toEpochMilli();
  }

  /** With the hand readings among those of the log that are kept; both are in order of time. */
  static IntBuffer among(Samples samples, int[] kept, List<HandReading> hands) {
    IntBuffer order = IntBuffer.allocate(kept.length + hands.size());
    int hand = 0;
    for (int index : kept) {
      while (hand < hands.size() && hands.get(hand).at() < samples.at(index)) {
        order.put(-1 - hand++);
      }
      order.put(index);
    }
    while (hand < hands.size()) {
      order.put(-1 - hand++);
    }
    return order.flip();
  }
}
