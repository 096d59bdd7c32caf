package org.flitchbook.sign;

/** A time stamp server's answer that is no time stamp of this signature. */
public final class TimestampException extends Exception {

  private static final long serialVersionUID = 1L;

  TimestampException(String message) {
    super(message);
  }

  TimestampException(String message, Throwable cause) {
    super(message, cause);
  }
}
