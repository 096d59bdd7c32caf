package org.flitchbook.doubt;

import java.util.List;
import org.flitchbook.input.Fault;
import org.flitchbook.lot.Lot;

/**
 * A lot that was looked at by the rules for dirty data.
 *
 * @param lot without the readings that are none, its own faults with what people said of them
 * @param faults what the rules found, with what people said of it
 */
public record Examined(Lot lot, List<Fault> faults) {

  public Examined {
    faults = List.copyOf(faults);
  }
}
