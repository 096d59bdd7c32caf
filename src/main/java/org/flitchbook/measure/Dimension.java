package org.flitchbook.measure;

/** What a unit measures; only values of one dimension can be compared. */
public enum Dimension {
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

  /** For a diagnostic: "a mass". */
  public String words() {
    return words;
  }
}
