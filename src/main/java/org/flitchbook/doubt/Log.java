package org.flitchbook.doubt;

import java.time.Instant;
import java.util.Arrays;
import java.util.stream.IntStream;
import org.flitchbook.input.Place;
import org.flitchbook.input.Stretch;
import org.flitchbook.lot.Track;
import org.flitchbook.sums.Shift;

/** The log's readings of one probe, without those by hand; levels as written, times in ms. */
final class Log {

  private final Track track;
  private final int[] logged;
  private final long[] out;

  Log(Track track) {
    this.track = track;
    this.out =
        track.excluded().stream()
            .filter(each -> each.standing() == Stretch.Standing.PROBE_OUT)
            .mapToLong(Track.Excluded::at)
            .toArray();
    this.logged = IntStream.range(0, track.size()).filter(i -> !track.byHand(i)).toArray();
  }

  Track track() {
    return track;
  }

  int size() {
    return logged.length;
  }

  int last() {
    return logged.length - 1;
  }

  long at(int index) {
    return track.earliest(logged[index]);
  }

  /** At the latest: a time written to the minute lies somewhere within it. */
  long latest(int index) {
    return track.latest(logged[index]);
  }

  long level(int index) {
    return track.level(logged[index], Shift.AS_WRITTEN);
  }

  long level(int index, Shift shift) {
    return track.level(logged[index], shift);
  }

  Place place(int index) {
    return track.place(logged[index]);
  }

  /** How far the level rose from one reading to another; below 0 where it fell. */
  long rise(int from, int to) {
    return level(to) - level(from);
  }

  long between(int from, int to) {
    return at(to) - at(from);
  }

  /** Whether the probe is known to have been out between two readings. */
  boolean isCut(int from, int to) {
    return Arrays.stream(out).anyMatch(time -> time > at(from) && time < at(to));
  }

  /** The last reading at or before a time; −1 where there is none. */
  int atOrBefore(long time) {
    int low = -1;
    int high = size();
    while (high - low > 1) {
      int middle = (low + high) >>> 1;
      if (at(middle) <= time) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return low;
  }

  /** The first reading at or after a time; the size where there is none. */
  int atOrAfter(long time) {
    int before = atOrBefore(time);
    return before >= 0 && at(before) == time ? before : before + 1;
  }

  Stretch stretch(int from, int until, Stretch.Standing standing) {
    return new Stretch(
        track.origin(), Instant.ofEpochMilli(at(from)), Instant.ofEpochMilli(at(until)), standing);
  }
}
