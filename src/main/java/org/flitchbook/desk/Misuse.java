package org.flitchbook.desk;

/** The job can't be done as it was asked for; the message says what would do. */
public final class Misuse extends RuntimeException {

  private static final long serialVersionUID = 1L;

  Misuse(String message) {
    super(message);
  }

  Misuse(String message, Throwable cause) {
    super(message, cause);
  }
}
