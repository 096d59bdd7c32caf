package org.flitchbook.json;

import java.util.List;
import java.util.Optional;
import org.flitchbook.input.Fault;

/** A JSON document, or what keeps it from being one. */
public record Parsed(Optional<Node.Obj> object, List<Fault> faults) {
  public Parsed {
    faults = List.copyOf(faults);
  }
}
