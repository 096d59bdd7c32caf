package org.flitchbook.table;

/** Counts physical lines from 1; a line ends at LF, at CR LF, or at CR alone. */
final class LineCount {

  private int line = 1;
  private boolean ended;
  private boolean afterCr;

  void take(char letter) {
    boolean secondHalf = afterCr && letter == '\n';
    if (ended && !secondHalf) {
      line++;
    }
    ended = letter == '\n' || letter == '\r';
    afterCr = letter == '\r';
  }

  /** The line on which the letter taken last stands, its end included. */
  int line() {
    return line;
  }

  /** The line on which the next letter will stand. */
  int lineOfNext() {
    return ended ? line + 1 : line;
  }
}
