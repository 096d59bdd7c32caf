package org.flitchbook.doubt;

import java.util.Map;
import java.util.Set;
import org.flitchbook.measure.Dimension;

/** A rule that the data file may state, and what it must state with it. */
interface Named {

  /** The rule's name, as its data file and the guide call it. */
  String name();

  /** The numbers that the rule's data must state, by their names. */
  default Map<String, Dimension> numbers() {
    return Map.of();
  }

  /** The lists of temperatures that the rule's data must state, by their names. */
  default Set<String> lists() {
    return Set.of();
  }
}
