package org.flitchbook.reading;

import java.util.stream.IntStream;
import org.flitchbook.practice.Practice;

/**
 * The times between the rows of one part, on the clock that was written down.
 *
 * @param from the first row, and {@code to} the one behind the last
 * @param usual the median of the steps forward in milliseconds; 0 where there are too few to tell
 * @param tolerance by how much a usual step may be off
 */
record Steps(LogRows rows, int from, int to, long usual, long tolerance) {

  static Steps of(ReadLog log, int from, int to) {
    Practice.SteadyClock practice = log.practice().steadyClock();
    long[] forward =
        IntStream.range(from + 1, to)
            .mapToLong(row -> log.at(row) - log.at(row - 1))
            .filter(step -> step > 0)
            .sorted()
            .toArray();
    long usual = forward.length < practice.fewestSteps() ? 0 : forward[forward.length / 2];
    return new Steps(
        log.rows(), from, to, usual, Math.max(log.precision(), practice.tolerance(usual)));
  }

  private long step(int row) {
    return rows.at(row) - rows.at(row - 1);
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
    // A steady stretch hangs together with the rows on the one side where there are any.
    boolean oneSide = (begin == from) != (end == to);
    return !steady || !oneSide ? -1 : begin == from ? begin : end;
  }
}
