package org.flitchbook.document;

/** A horizontal limit line across a chart, at a value of the y axis; the label is not blank. */
public record Guide(String label, double at) {
  public Guide {
    Demand.words("label of a limit line", label);
    Demand.finite("limit line \"" + label + "\"", at);
  }
}
