package org.flitchbook.sign;

import org.flitchbook.message.Message;

/** A time stamp server's answer that is no time stamp of this signature. */
public final class TimestampException extends Exception {

  private static final long serialVersionUID = 1L;

  private final transient Message fault;

  public TimestampException(Message fault) {
    super(fault.toString());
    this.fault = fault;
  }

  TimestampException(Message fault, Throwable cause) {
    super(fault.toString(), cause);
    this.fault = fault;
  }

  /** What is wrong with it. */
  public Message fault() {
    return fault;
  }
}
