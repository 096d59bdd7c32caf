package org.flitchbook.record;

import org.flitchbook.lot.Track;
import org.flitchbook.measure.Unit;
import org.flitchbook.sums.Shift;

/**
 * The ends of what a track saw.
 *
 * @param lowest the index of the first of its lowest readings
 * @param highest the index of the first of its highest readings
 */
record Extremes(int lowest, int highest) {

  static Extremes of(Track track) {
    int lowest = 0;
    int highest = 0;
    for (int i = 1; i < track.size(); i++) {
      lowest = level(track, i) < level(track, lowest) ? i : lowest;
      highest = level(track, i) > level(track, highest) ? i : highest;
    }
    return new Extremes(lowest, highest);
  }

  /** {@code 35.2 °F to 39.4 °F}. */
  static String range(Track track, Unit unit, Phrases phrases) {
    Extremes ends = of(track);
    return phrases.say(
        "record.band",
        "{0} to {1}",
        shown(track, ends.lowest, unit),
        shown(track, ends.highest, unit));
  }

  private static String shown(Track track, int index, Unit unit) {
    return Phrases.level(track, index, unit);
  }

  private static long level(Track track, int index) {
    return track.level(index, Shift.AS_WRITTEN);
  }
}
