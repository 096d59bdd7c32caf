package org.flitchbook.ledger;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A head as paper or a terminal states it: the number of a line, and its hash or the first digits
 * of it.
 *
 * @param sequence from 1
 * @param digits 16 to 64 lower-case hexadecimal digits
 */
public record StatedHead(long sequence, String digits) {

  /** Fewer could be met by a line that somebody tries again and again until it fits. */
  public static final int FEWEST = 16;

  private static final Pattern DIGITS = Pattern.compile("[0-9a-f]{" + FEWEST + ",64}");

  /** A number and digits alone, as somebody types them; a word may stand before the number. */
  private static final Pattern TYPED =
      Pattern.compile("\\s*(?:\\p{L}+\\s+)?(\\d{1,15})[\\s,:;.]\\s*([0-9a-f\\s]+)[.…\\s]*");

  /** A number and a whole hash within a sentence. */
  private static final Pattern SAID =
      Pattern.compile("(?<!\\w)(\\d{1,15})(?!\\w)\\D*?(?<!\\w)([0-9a-f]{64})(?!\\w)");

  /**
   * Reads what a person typed or copied, or what stands in a code; case and white space don't
   * matter. Empty where there is no number from 1 with at least {@value #FEWEST} digits.
   */
  public static Optional<StatedHead> read(String text) {
    String lower = text.toLowerCase(Locale.ROOT);
    Matcher typed = TYPED.matcher(lower);
    Matcher said = SAID.matcher(lower);
    if (typed.matches()) {
      return of(typed);
    }
    return said.find() ? of(said) : Optional.empty();
  }

  private static Optional<StatedHead> of(Matcher found) {
    long sequence = Long.parseLong(found.group(1));
    String digits = found.group(2).replaceAll("\\s", "");
    return sequence > 0 && DIGITS.matcher(digits).matches()
        ? Optional.of(new StatedHead(sequence, digits))
        : Optional.empty();
  }

  /** Whether it is this head that is stated. */
  public boolean states(Head head) {
    return head.sequence() == sequence && head.hash().startsWith(digits);
  }
}
