package org.flitchbook.document;

/**
 * A heading, never last on a page.
 *
 * @param level 1 (a part of the document) to 3
 * @param text not blank
 */
public record Heading(int level, String text) implements Block {
  public Heading {
    Demand.between("heading level", level, 1, 3);
    Demand.words("heading", text);
  }
}
