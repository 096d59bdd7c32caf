package org.flitchbook.doubt;

import java.util.ArrayList;
import java.util.List;
import org.flitchbook.measure.Ratio;

/**
 * Where a core's readings change faster than meat can: by more than a step between two readings and
 * faster than a rate, or faster than that rate for some time, or by more than half the way to its
 * air within a few minutes.
 */
record Leaps(ChangeRule.ProbeMoved rule, ProbeLog core, List<Air> airs, Ratio edge) {

  /**
   * One leap.
   *
   * @param before the last reading before it
   * @param after the first reading after it
   */
  record Leap(int before, int after, long rise) {

    boolean isUp() {
      return rise > 0;
    }

    private boolean goesOnWith(Leap next) {
      return isUp() == next.isUp() && next.before() <= after;
    }
  }

  static List<Leap> of(ChangeRule.ProbeMoved rule, Subject subject, ProbeLog core) {
    return new Leaps(rule, core, subject.airs(), subject.plan().practice().leapEdge()).all();
  }

  /** In the order of time; what goes on in one direction is one leap. */
  private List<Leap> all() {
    List<Leap> leaps = new ArrayList<>();
    for (int i = 0; i < core.last(); i++) {
      int after = leapFrom(i);
      if (after > 0) {
        add(leaps, new Leap(i, after, core.rise(i, after)));
      }
    }
    leaps.replaceAll(this::tightened);
    return leaps;
  }

  /** Without the readings at its ends that hardly belong to it. */
  private Leap tightened(Leap leap) {
    int before = leap.before();
    int after = leap.after();
    while (before + 1 < after && isLittle(before, before + 1, leap)) {
      before++;
    }
    while (after - 1 > before && isLittle(after - 1, after, leap)) {
      after--;
    }
    return new Leap(before, after, core.rise(before, after));
  }

  /** Less than the edge's share of the leap. */
  private boolean isLittle(int from, int to, Leap leap) {
    Ratio rise = Ratio.of(Math.abs(core.rise(from, to)));
    return rise.isBelow(Ratio.of(Math.abs(leap.rise())).times(edge));
  }

  private void add(List<Leap> leaps, Leap leap) {
    int last = leaps.size() - 1;
    if (last >= 0 && leaps.get(last).goesOnWith(leap)) {
      Leap first = leaps.get(last);
      int after = Math.max(first.after(), leap.after());
      leaps.set(last, new Leap(first.before(), after, core.rise(first.before(), after)));
    } else {
      leaps.add(leap);
    }
  }

  /** The reading to which it leaps from one; 0 where it does not. */
  private int leapFrom(int index) {
    int next = index + 1;
    if (core.isCut(index, next)) {
      return 0;
    }
    if (isStep(index, next)) {
      return next;
    }
    int kept = core.atOrAfter(core.at(index) + rule.keptFor().toMillis());
    if (kept < core.size() && isWithin(index, kept) && !core.isCut(index, kept)) {
      return isFast(index, kept) || isTowardsAir(index, kept) ? kept : 0;
    }
    return isTowardsAir(index, next) ? next : 0;
  }

  private boolean isWithin(int from, int to) {
    return core.between(from, to) <= rule.within().toMillis();
  }

  private boolean isStep(int from, int to) {
    return Math.abs(core.rise(from, to)) > rule.step().difference() && isFast(from, to);
  }

  private boolean isFast(int from, int to) {
    double minutes = core.between(from, to) / 60_000.0;
    return Math.abs(core.rise(from, to)) > rule.rate().difference() * minutes;
  }

  /** More than half of the way to the air, and more than a little. */
  private boolean isTowardsAir(int from, int to) {
    long rise = core.rise(from, to);
    if (Math.abs(rise) < rule.towardsAir().difference() || !isWithin(from, to)) {
      return false;
    }
    return airs.stream()
        .flatMap(air -> air.near(core.at(from), core.level(from)).stream())
        .map(air -> air - core.level(from))
        .anyMatch(
            way -> Long.signum(way) == Long.signum(rise) && 2 * Math.abs(rise) > Math.abs(way));
  }
}
