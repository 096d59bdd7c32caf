package org.flitchbook.doubt;

import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;
import org.flitchbook.lot.Track;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;
import org.flitchbook.sums.Shift;

/**
 * The coldest that was read of the air around a lot since its chill began, by logs and by hand, and
 * by whichever sensor; each reading at the coldest that it can have been.
 *
 * @param read by the times of all readings, in ms; none where the lot lay in water
 * @param lowest by the same times, the coldest so far
 */
record CoolerAir(NavigableMap<Long, Long> read, NavigableMap<Long, Long> lowest) {

  /** Before anything was read. */
  static final long NONE = Long.MIN_VALUE;

  private static final String WATER = "water";

  static CoolerAir of(Subject subject) {
    NavigableMap<Long, Long> read = new TreeMap<>();
    if (!isInWater(subject)) {
      List<Track> tracks = subject.lot().tracks(What.COOLER_TEMPERATURE, Step.CHILL);
      for (Track track : tracks) {
        for (int i = 0; i < track.size(); i++) {
          read.merge(track.earliest(i), track.level(i, Shift.DOWN), Math::min);
        }
      }
    }
    return new CoolerAir(read, soFar(read));
  }

  private static NavigableMap<Long, Long> soFar(NavigableMap<Long, Long> levels) {
    NavigableMap<Long, Long> lowest = new TreeMap<>();
    long least = Long.MAX_VALUE;
    for (Map.Entry<Long, Long> each : levels.entrySet()) {
      least = Math.min(least, each.getValue());
      lowest.put(each.getKey(), least);
    }
    return lowest;
  }

  private static boolean isInWater(Subject subject) {
    return subject.lot().stay(Step.CHILL).stream()
        .flatMap(stay -> stay.visits().stream())
        .flatMap(visit -> subject.plan().location(visit.place()).stream())
        .anyMatch(place -> place.kind().equals(WATER));
  }

  boolean isRead() {
    return !lowest.isEmpty();
  }

  boolean isReadNear(long time, Duration near) {
    Long next = lowest.ceilingKey(time - near.toMillis());
    return next != null && next <= time + near.toMillis();
  }

  /** The coldest read until a time, or {@link #NONE}. */
  long lowest(long until) {
    return Optional.ofNullable(lowest.floorEntry(until)).map(Map.Entry::getValue).orElse(NONE);
  }
}
