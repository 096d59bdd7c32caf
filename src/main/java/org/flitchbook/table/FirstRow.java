package org.flitchbook.table;

import java.io.IOException;
import java.util.List;

/**
 * What the first row shows about the rest: whether it is there at all, and what parts its words. A
 * quote opens only at the beginning of a cell: the one in {@code 5" slab} is a letter. What stands
 * in quotes does not count, and a line end in it does not end the row.
 */
final class FirstRow {

  static final List<Character> DELIMITERS = List.of(',', ';', '\t');

  private final int[] counts = new int[DELIMITERS.size()];
  private boolean blank = true;

  private FirstRow() {}

  static FirstRow of(TextReader reader) throws IOException {
    FirstRow row = new FirstRow();
    boolean cellBegins = true;
    for (int letter = reader.read(); !isEnd(letter); letter = reader.read()) {
      row.blank &= Character.isWhitespace(letter);
      if (letter == '"' && cellBegins) {
        skipQuoted(reader);
        cellBegins = false;
      } else {
        int delimiter = DELIMITERS.indexOf((char) letter);
        cellBegins = delimiter >= 0;
        row.counts[Math.max(0, delimiter)] += cellBegins ? 1 : 0;
      }
    }
    return row;
  }

  private static void skipQuoted(TextReader reader) throws IOException {
    for (int letter = reader.read(); letter >= 0; letter = reader.read()) {
      if (letter == '"' && reader.peek() != '"') {
        return;
      }
      if (letter == '"') {
        reader.read();
      }
    }
  }

  private static boolean isEnd(int letter) {
    return letter < 0 || letter == '\n' || letter == '\r';
  }

  boolean isBlank() {
    return blank;
  }

  /** The delimiter that parts the row into most words; a row of one word has a comma. */
  char delimiter() {
    int best = 0;
    for (int each = 1; each < counts.length; each++) {
      best = counts[each] > counts[best] ? each : best;
    }
    return DELIMITERS.get(best);
  }
}
