package org.flitchbook.message;

/** A value that is put into a message: a quantity, a time, a place, another message. */
public interface Argument {

  /** As it is printed in a language. */
  String in(Language language);

  /**
   * As JSON carries it: a text, a number, or a map or list of those. Two values that differ have
   * different JSON; no wording is part of it.
   */
  Object json();
}
