package org.flitchbook.doubt;

import java.util.List;
import java.util.Map;
import org.flitchbook.input.Fault;
import org.flitchbook.measure.Dimension;

/** Finds by one rule what is in doubt in a lot. */
interface Finder {

  /** The rule's name, as its data file and the guide call it. */
  String name();

  /** The numbers that the rule's data must state, by their names. */
  default Map<String, Dimension> numbers() {
    return Map.of();
  }

  List<Fault> find(Rule rule, Subject subject);
}
