package org.flitchbook.desk;

import java.util.List;

/** The job can't be done as it was asked for; the message says what would do. */
public final class Misuse extends RuntimeException {

  private static final long serialVersionUID = 1L;

  Misuse(String message) {
    super(message);
  }

  Misuse(String message, Throwable cause) {
    super(message, cause);
  }

  /** The same, with what was done before it came to this. */
  Misuse after(List<String> notes) {
    return notes.isEmpty()
        ? this
        : new Misuse(getMessage() + "\n" + String.join("\n", notes), this);
  }
}
