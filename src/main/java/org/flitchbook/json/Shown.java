package org.flitchbook.json;

import java.math.BigDecimal;

/** How a value of a document stands in a diagnostic: on one line, and never longer than one. */
final class Shown {

  private static final int LONGEST = 80;

  private Shown() {}

  static String onOneLine(String text) {
    int end = Math.min(text.length(), LONGEST);
    boolean inPair = end < text.length() && Character.isHighSurrogate(text.charAt(end - 1));
    String cut = text.substring(0, inPair ? end - 1 : end).replaceAll("\\p{Cntrl}", " ");
    return end < text.length() ? cut + "…" : cut;
  }

  /** Written out, digit by digit, only where that is short: 1e999999999 has a billion of them. */
  static String number(BigDecimal value) {
    boolean small = Math.abs((long) value.scale()) < LONGEST;
    return onOneLine(small ? value.toPlainString() : value.toString());
  }
}
