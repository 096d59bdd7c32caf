package org.flitchbook.desk;

/** Gives the passphrase of a person's key. The desk wipes what it was given after use. */
@FunctionalInterface
public interface Passphrase {

  /**
   * The passphrase.
   *
   * @param initials whose key it is for
   * @param anew whether it closes a new key, so that a person must write it twice
   */
  char[] of(String initials, boolean anew);
}
