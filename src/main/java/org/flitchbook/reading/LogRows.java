package org.flitchbook.reading;

import java.util.stream.Stream;

/**
 * The rows of one log, column by column: when, on which line, and a level for each column of
 * values. Plain numbers, because a log of a week has millions of them.
 */
final class LogRows {

  /** In the place of a level that a row does not have, and of the time of a row not to be used. */
  static final long NONE = Longs.NONE;

  /** A thousandth of a degree, of either scale, is a whole number of these. */
  private static final long GRAIN = 1_000_000;

  private final Longs at = new Longs(1);
  private final Chosen lines = new Chosen();
  private final Longs[] levels;
  private boolean turned;

  LogRows(int columns) {
    levels = Stream.generate(() -> new Longs(GRAIN)).limit(columns).toArray(Longs[]::new);
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

  /** From now on the last row is the first. */
  void turnRound() {
    turned = !turned;
  }

  /** Where a row of the file's order stands in this one, or the other way round. */
  int place(int row) {
    return turned ? at.size() - 1 - row : row;
  }

  /** In milliseconds: on the log's own clock until its times are resolved, then since 1970. */
  long at(int row) {
    return at.get(place(row));
  }

  void at(int row, long time) {
    at.set(place(row), time);
  }

  boolean isUsable(int row) {
    return at(row) != NONE;
  }

  int line(int row) {
    return lines.get(place(row));
  }

  long level(int column, int row) {
    return levels[column].get(place(row));
  }

  /** Whether no column has a level in both of two rows, as in parts of several probes. */
  boolean areApart(int one, int other) {
    return Stream.of(levels)
        .noneMatch(each -> each.get(place(one)) != NONE && each.get(place(other)) != NONE);
  }

  /** Whether two rows read the same in every column. */
  boolean readAlike(int one, int other) {
    for (int column = 0; column < levels.length; column++) {
      if (level(column, one) != level(column, other)) {
        return false;
      }
    }
    return true;
  }
}
