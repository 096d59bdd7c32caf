package org.flitchbook.document;

import java.util.List;

/**
 * Ruled room to write in by hand.
 *
 * @param label what is to be written; not blank
 * @param lines across the page, 1 to 12
 * @param slots what is to be written beside each other on one more line, such as a date; may be
 *     empty
 */
public record Blank(String label, int lines, List<String> slots) implements Block {
  public Blank {
    Demand.words("label of a blank", label);
    Demand.between("lines of a blank", lines, 1, 12);
    slots = List.copyOf(slots);
    slots.forEach(slot -> Demand.words("slot of a blank", slot));
  }
}
