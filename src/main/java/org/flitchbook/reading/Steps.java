package org.flitchbook.reading;

import java.util.Arrays;
import org.flitchbook.practice.Practice;

/** The times between the rows of one part, on the clock that was written down. */
final class Steps {

  private final LogRows rows;
  private final int from;
  private final int to;
  private final long usual;
  private final long tolerance;

  /**
   * @param practice when steps are steady
   * @param precision how late a row can have been after its time, in milliseconds
   */
  Steps(LogRows rows, int from, int to, Practice.SteadyClock practice, long precision) {
    this.rows = rows;
    this.from = from;
    this.to = to;
    this.usual = median(practice.fewestSteps());
    this.tolerance = Math.max(precision, practice.tolerance(usual));
  }

  private long median(int fewest) {
    long[] forward = new long[Math.max(0, to - from - 1)];
    int count = 0;
    for (int row = from + 1; row < to; row++) {
      long step = step(row);
      if (step > 0) {
        forward[count++] = step;
      }
    }
    Arrays.sort(forward, 0, count);
    return count < fewest ? 0 : forward[count / 2];
  }

  private long step(int row) {
    return rows.at(row) - rows.at(row - 1);
  }

  /** The median of the steps forward in milliseconds; 0 where there are too few to tell. */
  long usual() {
    return usual;
  }

  private boolean isUsual(long step) {
    return Math.abs(step - usual) <= tolerance;
  }

  /**
   * From which row on a stretch was the second time round, where the clock was set back in it.
   *
   * <p>One step that falls short of the interval by just the change is the change itself. Where it
   * leads back, or stands still, nothing else can be: a row that was left out elsewhere does not
   * touch that. In every other case each step must be usual, the one from the row before the
   * stretch and to the row behind it included. With rows on both sides and no such step the hour
   * was not logged twice, and nothing shows which of the two is missing.
   *
   * @param begin the first and {@code end} the row behind the last that the clock showed twice
   * @param back by how much it was set back, in milliseconds
   * @return {@code begin} or {@code end} where all were the second or the first time; -1 where the
   *     rows don't show it
   */
  int turn(int begin, int end, long back) {
    int turn = -1;
    boolean steady = usual > 0;
    for (int row = Math.max(begin, from + 1); row < Math.min(end + 1, to); row++) {
      boolean usualStep = isUsual(step(row));
      boolean change = !usualStep && isUsual(step(row) + back);
      if (change ? turn >= 0 : step(row) <= 0) {
        return -1;
      }
      turn = change ? row : turn;
      steady &= usualStep || change;
    }
    if (turn >= 0) {
      return usual > 0 && (steady || step(turn) <= 0) ? turn : -1;
    }
    return steady ? open(begin, end) : -1;
  }

  /** A steady stretch hangs together with the rows on the one side where there are any. */
  private int open(int begin, int end) {
    if ((begin == from) == (end == to)) {
      return -1;
    }
    return begin == from ? begin : end;
  }
}
