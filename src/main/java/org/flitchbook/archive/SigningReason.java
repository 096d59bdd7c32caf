package org.flitchbook.archive;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.flitchbook.ledger.Head;

/**
 * Why somebody signed, as the signature states it. Behind the reason stands the end of the ledger,
 * so that a ledger that was cut off or written again from before that line can't hide it.
 */
public record SigningReason(String reason, Optional<Head> ledger) {

  private static final Pattern STATED =
      Pattern.compile("(.*); ledger (\\d{1,15}) ([0-9a-f]{64})", Pattern.DOTALL);

  /** As a signature states it. */
  public String stated() {
    return ledger
        .map(end -> reason + "; ledger " + end.sequence() + " " + end.hash())
        .orElse(reason);
  }

  /** Reads what a signature states. */
  public static SigningReason of(String stated) {
    Matcher matcher = STATED.matcher(stated);
    return matcher.matches()
        ? new SigningReason(
            matcher.group(1),
            Optional.of(new Head(Long.parseLong(matcher.group(2)), matcher.group(3))))
        : new SigningReason(stated, Optional.empty());
  }
}
