package org.flitchbook.doubt;

import java.util.Map;
import org.flitchbook.measure.Dimension;

/**
 * What a person says of a fault, with what else it rests on. It names a fault that is on file, was
 * written after what it is about, and does not explain a stop away.
 */
final class Explaining implements Named {

  static final String NAME = "explanation";

  /** How far a reading may lie in time from those that it is held against. */
  static final String NEAR = "near";

  /** How soon after they began readings must be confirmed: later on, a core is like its air. */
  static final String WITHIN = "within";

  @Override
  public String name() {
    return NAME;
  }

  @Override
  public Map<String, Dimension> numbers() {
    return Map.of(NEAR, Dimension.TIME, WITHIN, Dimension.TIME);
  }
}
