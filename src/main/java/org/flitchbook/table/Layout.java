package org.flitchbook.table;

import java.nio.charset.Charset;
import java.util.Optional;

/**
 * How a file is laid out, where that is stated.
 *
 * @param charset empty: by its byte order mark, else UTF-8, else Windows-1252 if it is no UTF-8
 * @param delimiter empty: by the words of the heading
 * @param skip lines before the heading that are passed over
 */
public record Layout(Optional<Charset> charset, Optional<Character> delimiter, int skip) {

  public static final Layout OPEN = new Layout(Optional.empty(), Optional.empty(), 0);

  public Layout {
    if (skip < 0) {
      throw new IllegalArgumentException("can't skip " + skip + " lines");
    }
  }
}
