package org.flitchbook.sign;

/** A time stamp server's answer that is no time stamp of this signature. */
public final class BrokenStamp extends Exception {

  private static final long serialVersionUID = 1L;

  BrokenStamp(String message) {
    super(message);
  }

  BrokenStamp(String message, Throwable cause) {
    super(message, cause);
  }
}
