package org.flitchbook.desk;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.flitchbook.ledger.Head;

/**
 * The end of the ledger as a signature states it, at the end of its reason: a ledger that was cut
 * off or written anew before that line can't hide it.
 */
final class StatedHead {

  private static final Pattern STATED = Pattern.compile("ledger (\\d{1,15}) ([0-9a-f]{64})$");

  private StatedHead() {}

  static String in(String reason, Optional<Head> head) {
    return head.map(end -> reason + "; ledger " + end.sequence() + " " + end.hash()).orElse(reason);
  }

  static Optional<Head> of(String reason) {
    Matcher stated = STATED.matcher(reason);
    return stated.find()
        ? Optional.of(new Head(Long.parseLong(stated.group(1)), stated.group(2)))
        : Optional.empty();
  }
}
