package org.flitchbook.table;

/** Where lines end in a text: at LF, at CR LF, or at CR alone. */
final class Lines {

  private static final String DELIMITERS = ",;\t";

  private Lines() {}

  /** Where the text goes on behind so many lines; its length where it has no more. */
  static int skip(String text, int lines) {
    int at = 0;
    for (int skipped = 0; skipped < lines && at < text.length(); skipped++) {
      at = behindEnd(text, at);
    }
    return Math.min(at, text.length());
  }

  /** The physical line, from 1, on which a letter stands. */
  static int lineOf(String text, int index) {
    int line = 1;
    for (int at = behindEnd(text, 0); at <= index; at = behindEnd(text, at)) {
      line++;
    }
    return line;
  }

  /**
   * The first row from there without what stands in quotes; it goes on behind a line end in quotes.
   * A quote opens only at the beginning of a cell: the one in {@code 5" slab} is a letter.
   */
  static String bareHeading(String text, int start) {
    StringBuilder bare = new StringBuilder();
    char before = ',';
    int at = start;
    while (at < text.length() && !isEnd(text.charAt(at))) {
      char letter = text.charAt(at);
      if (letter == '"' && DELIMITERS.indexOf(before) >= 0) {
        at = behindQuotes(text, at + 1);
      } else {
        bare.append(letter);
        at++;
      }
      before = letter;
    }
    return bare.toString();
  }

  private static int behindQuotes(String text, int inside) {
    int close = text.indexOf('"', inside);
    while (close >= 0 && text.startsWith("\"\"", close)) {
      close = text.indexOf('"', close + 2);
    }
    return close < 0 ? text.length() : close + 1;
  }

  private static int behindEnd(String text, int start) {
    int at = start;
    while (at < text.length() && !isEnd(text.charAt(at))) {
      at++;
    }
    return text.startsWith("\r\n", at) ? at + 2 : at + 1;
  }

  private static boolean isEnd(char letter) {
    return letter == '\n' || letter == '\r';
  }
}
