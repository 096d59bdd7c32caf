package org.flitchbook.job;

import java.util.ArrayList;
import java.util.List;
import org.flitchbook.message.Message;

/** The job can't be done as it was asked for; the message says what would do. */
public final class UsageException extends RuntimeException {

  private static final long serialVersionUID = 1L;

  private final transient List<Message> messages;

  public UsageException(Message message) {
    this(List.of(message));
  }

  /** On a line each. */
  public UsageException(List<Message> messages) {
    super(messages.get(0).toString());
    this.messages = List.copyOf(messages);
  }

  public UsageException(Message message, Throwable cause) {
    super(message.toString(), cause);
    this.messages = List.of(message);
  }

  /** The same, with what was done before it came to this. */
  public UsageException after(List<Message> notes) {
    List<Message> all = new ArrayList<>(messages);
    all.addAll(notes);
    UsageException longer = new UsageException(all);
    longer.initCause(this);
    return longer;
  }

  /** What is said, on a line each. */
  public List<Message> messages() {
    return messages;
  }
}
