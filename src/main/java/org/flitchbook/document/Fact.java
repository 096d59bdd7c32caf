package org.flitchbook.document;

import java.util.Objects;

/** A label, not blank, with its value. */
public record Fact(String label, Text value) {
  public Fact {
    Demand.words("label of a fact", label);
    Objects.requireNonNull(value, "value of a fact");
  }
}
