package org.flitchbook.measure;

import java.util.List;

/** What is given as a quantity, and so says which quantities it can have. */
public interface Measurable {

  Dimension dimension();

  /** The units in which it may be written, of that dimension. */
  default List<Unit> units() {
    return Unit.of(dimension());
  }
}
