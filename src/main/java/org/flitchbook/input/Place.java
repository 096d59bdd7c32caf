package org.flitchbook.input;

import org.flitchbook.message.Argument;
import org.flitchbook.message.Language;

/**
 * Where in an input something stands.
 *
 * @param file the file's name within the book, such as {@code 2026-02-24/cure.csv}
 * @param line the physical line, from 1, the heading included; 0 for the file as a whole
 * @param column the heading's word in a sheet, the key's path in JSON; empty where neither applies
 */
public record Place(String file, int line, String column) implements Argument {

  public Place {
    if (line < 0) {
      throw new IllegalArgumentException("line " + line + " is below 0");
    }
  }

  public static Place of(String file) {
    return new Place(file, 0, "");
  }

  public static Place of(String file, int line) {
    return new Place(file, line, "");
  }

  public Place column(String name) {
    return new Place(file, line, name);
  }

  /** Of whatever column. */
  public boolean isSameLine(Place other) {
    return file.equals(other.file) && line == other.line;
  }

  @Override
  public String in(Language language) {
    return toString();
  }

  @Override
  public Object json() {
    return toString();
  }

  /** {@code file:line:column}, leaving out what does not apply. */
  @Override
  public String toString() {
    return file + (line == 0 ? "" : ":" + line) + (column.isEmpty() ? "" : ":" + column);
  }
}
