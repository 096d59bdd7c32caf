package org.flitchbook.reading;

import java.util.EnumSet;
import java.util.Set;
import java.util.stream.Collectors;
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

  private Logged() {}

  static boolean ofPlace(What what) {
    return OF_PLACE.contains(what);
  }

  /** Whether a column of a log may hold it. */
  static boolean inLogs(What what) {
    return what == What.INTERNAL_TEMPERATURE || ofPlace(what);
  }

  /** For a diagnostic. */
  static String choices() {
    return "one of "
        + What.INTERNAL_TEMPERATURE.word()
        + ", "
        + OF_PLACE.stream().map(What::word).collect(Collectors.joining(", "));
  }
}
