package org.flitchbook.input;

import java.util.Optional;
import org.flitchbook.message.Message;

/**
 * Something wrong with what was handed in: the rule in plain words, where, what was found, and what
 * would have done.
 *
 * @param lot the lot that it touches; empty where it touches the whole day or a whole file
 * @param stretch the readings that it is about, where it is about some of a log's and not about all
 * @param explained what a person said about it; empty where nobody did
 */
public record Fault(
    String rule,
    Severity severity,
    String lot,
    Place place,
    Message found,
    Message expected,
    Optional<Stretch> stretch,
    Optional<Explained> explained) {

  public Fault(
      String rule, Severity severity, String lot, Place place, Message found, Message expected) {
    this(rule, severity, lot, place, found, expected, Optional.empty(), Optional.empty());
  }

  public static Fault broken(String rule, Place place, Message found, Message expected) {
    return new Fault(rule, Severity.BROKEN, "", place, found, expected);
  }

  public static Fault stop(String rule, String lot, Place place, Message found, Message expected) {
    return new Fault(rule, Severity.STOP, lot, place, found, expected);
  }

  public static Fault ask(String rule, String lot, Place place, Message found, Message expected) {
    return new Fault(rule, Severity.ASK, lot, place, found, expected);
  }

  public static Fault note(String rule, String lot, Place place, Message found, Message expected) {
    return new Fault(rule, Severity.NOTE, lot, place, found, expected);
  }

  public boolean is(Severity other) {
    return severity == other;
  }

  /** The same fault of another lot: a log may serve several. */
  public Fault ofLot(String code) {
    return new Fault(rule, severity, code, place, found, expected, stretch, explained);
  }

  public Fault over(Stretch readings) {
    return new Fault(rule, severity, lot, place, found, expected, Optional.of(readings), explained);
  }

  public Fault explained(Explained said) {
    return new Fault(rule, severity, lot, place, found, expected, stretch, Optional.of(said));
  }

  /** Whether it keeps a lot from being released as it stands. */
  public boolean isOpen() {
    return severity == Severity.STOP || (severity == Severity.ASK && explained.isEmpty());
  }

  /** Whether nothing may be met by what it touches: open, or explained without evidence. */
  public boolean isInDoubt() {
    return isOpen()
        || (severity == Severity.ASK && explained.filter(Explained::isBorneOut).isEmpty());
  }

  /** {@code file:line:column: found X, expected Y}. */
  public Message message() {
    return Message.say("input.fault", "{0}: found {1}, expected {2}", place, found, expected);
  }

  /** In English. */
  @Override
  public String toString() {
    return message().toString();
  }
}
