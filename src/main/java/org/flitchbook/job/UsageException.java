package org.flitchbook.job;

import java.util.List;

/** The job can't be done as it was asked for; the message says what would do. */
public final class UsageException extends RuntimeException {

  private static final long serialVersionUID = 1L;

  public UsageException(String message) {
    super(message);
  }

  public UsageException(String message, Throwable cause) {
    super(message, cause);
  }

  /** The same, with what was done before it came to this. */
  public UsageException after(List<String> notes) {
    return notes.isEmpty()
        ? this
        : new UsageException(getMessage() + "\n" + String.join("\n", notes), this);
  }
}
