package org.flitchbook.reading;

import java.util.Arrays;

/** Grows as rows are read. */
final class LoggedSamples implements Samples {

  private long[] at = new long[256];
  private long[] levels = new long[256];
  private int[] lines = new int[256];
  private int size;

  void add(long atMillis, long level, int line) {
    if (size == at.length) {
      at = Arrays.copyOf(at, size * 2);
      levels = Arrays.copyOf(levels, size * 2);
      lines = Arrays.copyOf(lines, size * 2);
    }
    at[size] = atMillis;
    levels[size] = level;
    lines[size] = line;
    size++;
  }

  @Override
  public int size() {
    return size;
  }

  @Override
  public long at(int index) {
    return at[index];
  }

  @Override
  public long level(int index) {
    return levels[index];
  }

  @Override
  public int line(int index) {
    return lines[index];
  }
}
