package org.flitchbook.plan;

import java.util.List;
import java.util.Optional;
import org.flitchbook.input.Fault;

/** A plan, or what keeps it from being one; there is no plan while there is a fault. */
public record PlanRead(Optional<Plan> plan, List<Fault> faults) {
  public PlanRead {
    faults = List.copyOf(faults);
  }
}
