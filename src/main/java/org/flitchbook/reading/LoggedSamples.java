package org.flitchbook.reading;

import java.util.Arrays;

/** Grows as rows are read. */
final class LoggedSamples implements Samples {

  private static final int FEW = 5;

  /** A third of the 5 minutes that are no gap yet, so that three of it are none. */
  private static final long SHORT = 100_000;

  private long[] at = new long[256];
  private long[] levels = new long[256];
  private int[] lines = new int[256];
  private int size;
  private long interval;

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
    interval = 0;
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

  /** Worked out once, since a log may serve many lots. */
  @Override
  public long interval() {
    if (interval == 0) {
      long median = median();
      interval = size < FEW ? Math.min(median, SHORT) : median;
    }
    return interval;
  }

  private long median() {
    if (size < 2) {
      return SHORT;
    }
    long[] steps = new long[size - 1];
    for (int i = 0; i < steps.length; i++) {
      steps[i] = at[i + 1] - at[i];
    }
    Arrays.sort(steps);
    return steps[steps.length / 2];
  }

  @Override
  public int line(int index) {
    return lines[index];
  }
}
