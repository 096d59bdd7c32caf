package org.flitchbook.keys;

import org.flitchbook.job.Session;

/** Gives the passphrase of a person's key. It is wiped after use. */
@FunctionalInterface
public interface Passphrase {

  /**
   * The passphrase.
   *
   * @param session of the job that wants it
   * @param initials whose key it is for
   * @param isNew whether it closes a new key, so that a person must write it twice
   */
  char[] of(Session session, String initials, boolean isNew);
}
