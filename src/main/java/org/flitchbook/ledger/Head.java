package org.flitchbook.ledger;

import java.util.Locale;
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

  /** 80 bits: more than anybody can try until another line begins alike. */
  private static final int SHORT = 20;

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

  /** The first 20 digits of the hash in groups of four, for paper: to be read out and typed. */
  public String shortHash() {
    return hash.substring(0, SHORT).replaceAll("(.{4})(?=.)", "$1 ");
  }

  /** Number and whole hash, as a small code holds them best: digits and capitals. */
  public String forCode() {
    return sequence + " " + hash.toUpperCase(Locale.ROOT);
  }
}
