package org.flitchbook.lot;

import java.util.Optional;
import java.util.stream.IntStream;
import org.flitchbook.measure.Ratio;
import org.flitchbook.practice.Practice;
import org.flitchbook.sums.Shift;

/**
 * Where one probe of a core stops and another begins. Between the two the core went on as it was
 * seen to change before and after: its next level lies between the lines of both, by no more than
 * the errors of both.
 *
 * @param first the probe that was taken out, and {@code then} the one that was put in
 */
record Seam(Track first, Track then) {

  /** The slowest and fastest that a core may have changed by, in levels a ms; below 0 it fell. */
  private record Slopes(Ratio least, Ratio most) {

    Slopes and(Slopes other) {
      return new Slopes(
          least.isBelow(other.least) ? least : other.least,
          most.isBelow(other.most) ? other.most : most);
    }
  }

  boolean holds(Practice.Handover practice) {
    return lastOf(first) >= 0 && lastOf(then) >= 0 && isClose(practice) && agrees(practice);
  }

  /** The one begins and ends before the other, and they meet within some minutes. */
  private boolean isClose(Practice.Handover practice) {
    return begin() > first.earliest(first.loggedAtOrAfter(0))
        && then.earliest(lastOf(then)) > end()
        && Math.abs(begin() - end()) <= practice.within().toMillis();
  }

  private boolean agrees(Practice.Handover practice) {
    return slopes(practice.slope().toMillis())
        .filter(slopes -> begin() >= end() ? isOnTheWay(slopes) : isBesideEachOther(slopes))
        .isPresent();
  }

  private static int lastOf(Track track) {
    return track.loggedAtOrBefore(track.size() - 1);
  }

  private int firstOfThen() {
    return then.loggedAtOrAfter(0);
  }

  private long end() {
    return first.earliest(lastOf(first));
  }

  private long begin() {
    return then.earliest(firstOfThen());
  }

  private Optional<Slopes> slopes(long length) {
    Optional<Slopes> before = slopes(first, end() - length, end());
    Optional<Slopes> after = slopes(then, begin(), begin() + length);
    return before.flatMap(one -> after.map(one::and));
  }

  /** By the first and the last reading of the log in a time, where there are two. */
  private static Optional<Slopes> slopes(Track track, long from, long until) {
    int[] logged =
        IntStream.range(0, track.size())
            .filter(i -> !track.byHand(i))
            .filter(i -> track.earliest(i) >= from && track.earliest(i) <= until)
            .toArray();
    if (logged.length < 2) {
      return Optional.empty();
    }
    int begin = logged[0];
    int end = logged[logged.length - 1];
    long time = track.earliest(end) - track.earliest(begin);
    long least = track.level(end, Shift.DOWN) - track.level(begin, Shift.UP);
    long most = track.level(end, Shift.UP) - track.level(begin, Shift.DOWN);
    return time > 0
        ? Optional.of(new Slopes(Ratio.of(least, time), Ratio.of(most, time)))
        : Optional.empty();
  }

  private boolean isOnTheWay(Slopes slopes) {
    return agree(lastOf(first), firstOfThen(), slopes);
  }

  /** While both were in, each reading of the one agrees with the last of the other before it. */
  private boolean isBesideEachOther(Slopes slopes) {
    return IntStream.rangeClosed(firstOfThen(), then.size() - 1)
        .filter(i -> !then.byHand(i) && then.earliest(i) <= end())
        .allMatch(i -> agree(before(then.earliest(i)), i, slopes));
  }

  private int before(long time) {
    int index = lastOf(first);
    while (index > 0 && (first.byHand(index) || first.earliest(index) > time)) {
      index--;
    }
    return index;
  }

  private boolean agree(int one, int other, Slopes slopes) {
    Ratio time = Ratio.of(then.earliest(other) - first.earliest(one));
    Ratio highest = slopes.most().times(time).plus(Ratio.of(first.level(one, Shift.UP)));
    Ratio lowest = slopes.least().times(time).plus(Ratio.of(first.level(one, Shift.DOWN)));
    return !Ratio.of(then.level(other, Shift.DOWN)).isAbove(highest)
        && !Ratio.of(then.level(other, Shift.UP)).isBelow(lowest);
  }
}
