package org.flitchbook.reading;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.flitchbook.sheet.What;

/** What a probe reads: of a place, or of a piece. */
final class Logged {

  private static final Set<What> OF_PLACE =
      EnumSet.of(
          What.COOLER_TEMPERATURE,
          What.WATER_TEMPERATURE,
          What.CHAMBER_TEMPERATURE,
          What.WET_BULB_TEMPERATURE,
          What.HUMIDITY);

  /** What a column of a log may hold. */
  static final List<What> ALL =
      Stream.concat(Stream.of(What.INTERNAL_TEMPERATURE), OF_PLACE.stream()).toList();

  private Logged() {}

  static boolean ofPlace(What what) {
    return OF_PLACE.contains(what);
  }
}
