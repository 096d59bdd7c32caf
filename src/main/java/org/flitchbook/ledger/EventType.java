package org.flitchbook.ledger;

import java.util.Locale;

/**
 * What can happen to a book's records. A ledger of a later version may know more words; its lines
 * are read and verified all the same.
 */
public enum EventType {
  /** The records of a day were written for the first time. */
  CLOSED,
  /** The records of a day were written again, for a reason that the line states. */
  AMENDED,
  /** A record was signed. */
  SIGNED,
  /** A lot's review before dispatch is on file and nothing holds the lot. */
  RELEASED,
  /** A lot that had been released is held again. */
  RELEASE_WITHDRAWN,
  /** Goods of a lot left the house. */
  DISPATCHED,
  /** An instrument failed a check. */
  INSTRUMENT_FAILED;

  /** As the ledger writes it: {@code instrument failed}. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }
}
