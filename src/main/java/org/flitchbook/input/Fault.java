package org.flitchbook.input;

/**
 * Something wrong with what was handed in: the rule in plain words, where, what was found, and what
 * would have done.
 *
 * @param lot the lot that it touches; empty where it touches the whole day or a whole file
 */
public record Fault(
    String rule, Severity severity, String lot, Place place, String found, String expected) {

  public static Fault broken(String rule, Place place, String found, String expected) {
    return new Fault(rule, Severity.BROKEN, "", place, found, expected);
  }

  public static Fault stop(String rule, String lot, Place place, String found, String expected) {
    return new Fault(rule, Severity.STOP, lot, place, found, expected);
  }

  public static Fault ask(String rule, String lot, Place place, String found, String expected) {
    return new Fault(rule, Severity.ASK, lot, place, found, expected);
  }

  public static Fault note(String rule, String lot, Place place, String found, String expected) {
    return new Fault(rule, Severity.NOTE, lot, place, found, expected);
  }

  public boolean is(Severity other) {
    return severity == other;
  }

  /** Whether it keeps a lot from being released as it stands. */
  public boolean isOpen() {
    return severity == Severity.STOP || severity == Severity.ASK;
  }

  /** {@code file:line:column: found X, expected Y}. */
  @Override
  public String toString() {
    return place + ": found " + found + ", expected " + expected;
  }
}
