package org.flitchbook.record;

import java.util.List;
import org.flitchbook.change.Change;

/**
 * Where a close puts its records, and why it is made.
 *
 * @param revision of the day's records, from 1; 0 where they are printed outside of the book
 * @param line the number of the ledger's last line before this close; 0 where it has none
 * @param hash of that line
 * @param amends the revision that this one follows; 0 for the first
 * @param by the initials of the one who closes; empty where nobody is named
 * @param reason why records that were closed are made again
 * @param changes in the inputs since the revision that this one follows
 */
public record Filing(
    int revision,
    long line,
    String hash,
    int amends,
    String by,
    String reason,
    List<Change> changes) {

  /** Records that are printed outside of the book, or not at all. */
  public static final Filing OUTSIDE = new Filing(0, 0, "", 0, "", "", List.of());

  public Filing {
    changes = List.copyOf(changes);
    if (revision < 0 || amends < 0 || amends >= Math.max(1, revision)) {
      throw new IllegalArgumentException("revision " + revision + " after " + amends);
    }
  }

  public boolean isFiled() {
    return revision > 0;
  }

  public boolean isAmendment() {
    return amends > 0;
  }
}
