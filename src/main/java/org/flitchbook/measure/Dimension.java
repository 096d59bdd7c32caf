package org.flitchbook.measure;

import java.util.Locale;
import org.flitchbook.message.Argument;
import org.flitchbook.message.Language;

/** What a unit measures; only values of one dimension can be compared. */
public enum Dimension implements Argument {
  MASS("a mass"),
  TEMPERATURE("a temperature"),
  SHARE("a share"),
  TIME("a length of time"),
  LENGTH("a length"),
  NUMBER("a bare number");

  private final String words;

  Dimension(String words) {
    this.words = words;
  }

  @Override
  public String in(Language language) {
    return language.text("dimension." + name().toLowerCase(Locale.ROOT), words);
  }

  @Override
  public Object json() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** For a diagnostic: "a mass". */
  public String words() {
    return words;
  }
}
