package org.flitchbook.change;

import static org.flitchbook.message.Message.say;

import java.util.Locale;
import java.util.Optional;
import org.flitchbook.input.Place;
import org.flitchbook.message.Message;

/**
 * One thing that changed: a row of a sheet, a key of a JSON file, a stretch of a log, a file, or
 * something that stands in no file.
 *
 * @param name what it is, where it stands in no file
 * @param before where it stood; where it is new, the file alone
 * @param now where it stands; where it is gone, the file alone
 * @param old what stood there; empty where it is new
 * @param text what stands there; empty where it is gone
 */
public record Change(
    Optional<Message> name,
    Place before,
    Place now,
    Optional<Message> old,
    Optional<Message> text) {

  /** What was done to it. */
  public enum Type {
    ADDED,
    REMOVED,
    CHANGED;

    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /**
   * A change in a file.
   *
   * @param before where it stood, or would have, as {@code now}
   */
  static Change of(Place before, Place now, Optional<Message> old, Optional<Message> text) {
    return new Change(
        Optional.empty(),
        old.isEmpty() ? Place.of(before.file()) : before,
        text.isEmpty() ? Place.of(now.file()) : now,
        old,
        text);
  }

  public Type type() {
    if (old.isEmpty()) {
      return Type.ADDED;
    }
    return text.isEmpty() ? Type.REMOVED : Type.CHANGED;
  }

  /** Where to look: the place that is there now, else the one that was. */
  public Place place() {
    return text.isEmpty() ? before : now;
  }

  /** Whether it stands on another line than before. */
  public boolean hasMoved() {
    return type() == Type.CHANGED && before.line() != now.line();
  }

  /** {@code 2026-02-24/chill.csv:3:value: changed from … to …}. */
  public Message said() {
    return switch (type()) {
      case ADDED -> say("change.added", "{0}: added: {1}", where(), text.orElseThrow());
      case REMOVED -> say("change.removed", "{0}: removed: {1}", where(), old.orElseThrow());
      case CHANGED ->
          say(
              "change.changed",
              "{0}: changed from: {1}; to: {2}",
              where(),
              old.orElseThrow(),
              text.orElseThrow());
    };
  }

  private Message where() {
    return hasMoved()
        ? say("change.moved", "{0} (was line {1})", now, before.line())
        : name.orElse(Message.of(place()));
  }

  /** In English. */
  @Override
  public String toString() {
    return said().toString();
  }
}
