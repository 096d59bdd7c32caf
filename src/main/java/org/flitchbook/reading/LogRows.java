package org.flitchbook.reading;

import java.util.stream.Stream;

/**
 * The rows of one log, column by column: when, on which line, and a level for each column of
 * values. Plain numbers, because a log of a week has millions of them.
 */
final class LogRows {

  /** In the place of a level that a row does not have, and of the time of a row not to be used. */
  static final long NONE = Long.MIN_VALUE;

  private final Longs at = new Longs();
  private final Longs lines = new Longs();
  private final Longs[] levels;

  LogRows(int columns) {
    levels = Stream.generate(Longs::new).limit(columns).toArray(Longs[]::new);
  }

  void add(long time, int line, long[] row) {
    at.add(time);
    lines.add(line);
    for (int column = 0; column < levels.length; column++) {
      levels[column].add(row[column]);
    }
  }

  int size() {
    return at.size();
  }

  /** In milliseconds: on the log's own clock until its times are resolved, then since 1970. */
  long at(int row) {
    return at.get(row);
  }

  void at(int row, long time) {
    at.set(row, time);
  }

  void drop(int row) {
    at.set(row, NONE);
  }

  boolean isUsable(int row) {
    return at.get(row) != NONE;
  }

  int line(int row) {
    return (int) lines.get(row);
  }

  long level(int column, int row) {
    return levels[column].get(row);
  }

  /** Whether two rows read the same in every column. */
  boolean readAlike(int one, int other) {
    for (Longs column : levels) {
      if (column.get(one) != column.get(other)) {
        return false;
      }
    }
    return true;
  }

  void reverse() {
    at.reverse();
    lines.reverse();
    for (Longs column : levels) {
      column.reverse();
    }
  }
}
