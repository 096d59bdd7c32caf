package org.flitchbook.job;

import java.util.List;
import java.util.stream.Stream;
import org.flitchbook.message.Message;

/** The job can't be done as it was asked for; the message says what would do. */
public final class UsageException extends RuntimeException {

  private static final long serialVersionUID = 1L;

  private final transient List<Message> messages;

  /** With a message of that id, see {@link Message}. */
  public UsageException(String id, String english, Object... arguments) {
    this(List.of(Message.say(id, english, arguments)));
  }

  /** With a message of that id, see {@link Message}. */
  public UsageException(Throwable cause, String id, String english, Object... arguments) {
    this(id, english, arguments);
    initCause(cause);
  }

  /** With messages on a line each. */
  public UsageException(List<Message> messages) {
    super(messages.get(0).toString());
    this.messages = List.copyOf(messages);
  }

  /** The same, with what was done before it came to this. */
  public UsageException after(List<Message> notes) {
    UsageException longer =
        new UsageException(Stream.concat(messages.stream(), notes.stream()).toList());
    longer.initCause(this);
    return longer;
  }

  /** What is said, on a line each. */
  public List<Message> messages() {
    return messages;
  }
}
