package org.flitchbook.ledger;

import java.util.regex.Pattern;

/**
 * The end of the chain: a person who keeps it elsewhere can say later whether the ledger up to
 * there was touched.
 *
 * @param sequence the number of the last line, from 1; 0 before the first
 * @param hash of that line, 64 lower-case hexadecimal digits; 64 zeros before the first
 */
public record Head(long sequence, String hash) {

  private static final Pattern HASH = Pattern.compile("[0-9a-f]{64}");
  private static final int SHORT = 12;

  /** The head of a ledger without lines. */
  public static final Head NONE = new Head(0, "0".repeat(64));

  public Head {
    if (sequence < 0) {
      throw new IllegalArgumentException("sequence " + sequence + " is below 0");
    }
    if (!isHash(hash)) {
      throw new IllegalArgumentException("\"" + hash + "\" is no SHA-256 in hexadecimal");
    }
  }

  /** Whether a text could be a SHA-256: 64 lower-case hexadecimal digits. */
  static boolean isHash(String text) {
    return HASH.matcher(text).matches();
  }

  /** The first 12 digits of the hash, for paper. */
  public String shortHash() {
    return hash.substring(0, SHORT);
  }
}
