package org.flitchbook.document;

import java.util.List;

/**
 * A grid of labels with their values, filled row by row.
 *
 * @param columns facts beside each other, 1 to 3
 * @param facts not empty
 */
public record Facts(int columns, List<Fact> facts) implements Block {
  public Facts {
    Require.between("columns of facts", columns, 1, 3);
    facts = List.copyOf(facts);
    Require.notEmpty("facts", facts);
  }

  /** A label, not blank, with its value. */
  public record Fact(String label, Text value) {
    public Fact {
      Require.notBlank("label of a fact", label);
    }
  }
}
