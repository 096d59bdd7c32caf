package org.flitchbook.job;

/** How a job ended, with the exit status of the program. */
public enum ExitStatus {
  /** All well, what is pending included. */
  WELL(0),
  /** A limit not met or not shown, or an ask or a stop open. */
  AMISS(1),
  /** Wrong use: no such day, no such folder, a folder that can't be written to. */
  MISUSE(2),
  /** A file can't be parsed; nothing was written. */
  BROKEN(3);

  private final int code;

  ExitStatus(int code) {
    this.code = code;
  }

  public int code() {
    return code;
  }
}
