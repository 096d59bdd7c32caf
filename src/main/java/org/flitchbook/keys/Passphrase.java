package org.flitchbook.keys;

/** Gives the passphrase of a person's key. It is wiped after use. */
@FunctionalInterface
public interface Passphrase {

  /**
   * The passphrase.
   *
   * @param initials whose key it is for
   * @param isNew whether it closes a new key, so that a person must write it twice
   */
  char[] of(String initials, boolean isNew);
}
