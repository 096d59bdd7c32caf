package org.flitchbook.document;

/** Small print, such as the sources under a table; not blank. */
public record Note(Text text) implements Block {
  public Note {
    Demand.words("note", text.plain());
  }
}
