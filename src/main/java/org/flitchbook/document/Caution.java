package org.flitchbook.document;

/** A short warning in a small frame; not blank. */
public record Caution(String text) implements Block {
  public Caution {
    Demand.words("caution", text);
  }
}
