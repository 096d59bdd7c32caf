package org.flitchbook.sign;

import org.flitchbook.message.Message;
import org.jspecify.annotations.Nullable;

/** A time stamp server's answer that is no time stamp of this signature. */
public final class TimestampException extends Exception {

  private static final long serialVersionUID = 1L;

  private final transient Message fault;

  public TimestampException(Message fault) {
    this(fault, null);
  }

  TimestampException(Message fault, @Nullable Throwable cause) {
    super(fault.toString(), cause);
    this.fault = fault;
  }

  /** What is wrong with it. */
  public Message fault() {
    return fault;
  }
}
