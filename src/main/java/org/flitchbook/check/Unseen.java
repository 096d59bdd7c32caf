package org.flitchbook.check;

import java.time.Instant;
import org.flitchbook.lot.Track;
import org.flitchbook.sheet.Step;

/**
 * The time without readings beside a probe's highest: a gap of its log in the smoke, or the part of
 * the smoke before it began or after it ended. What a hand reading saw is not unseen, nor is what
 * was read and left out: a reading that is not believed must not leave the peak open.
 */
record Unseen(JudgedLot judged, WorstReading peak) {

  /** Never of a lot that nobody wrote into the smoke. */
  boolean isBeside() {
    return judged.lot().stay(Step.SMOKE).isPresent()
        && isLogged(peak.index())
        && (isBefore() || isAfter());
  }

  private Track track() {
    return peak.track();
  }

  private boolean isLogged(int index) {
    return track().interval() > 0 && !track().byHand(index);
  }

  private boolean isBefore() {
    int before = peak.index() - 1;
    return before < 0
        ? isLong(into(), at(0))
        : isLogged(before) && isGap(before) && at(before).isBefore(out());
  }

  private boolean isAfter() {
    int after = peak.index() + 1;
    return after == track().size()
        ? isLong(at(peak.index()), out())
        : isLogged(after) && isGap(peak.index()) && at(peak.index()).isBefore(out());
  }

  private boolean isGap(int before) {
    return track().gapAfter(before) && isSilent(at(before), at(before + 1));
  }

  private boolean isSilent(Instant from, Instant until) {
    return track().excluded().stream()
        .noneMatch(each -> each.at() >= from.toEpochMilli() && each.at() <= until.toEpochMilli());
  }

  private boolean isLong(Instant from, Instant until) {
    return until.toEpochMilli() - from.toEpochMilli() > track().longestStep()
        && isSilent(from, until);
  }

  private Instant at(int index) {
    return Instant.ofEpochMilli(track().earliest(index));
  }

  private Instant into() {
    return judged.lot().stay(Step.SMOKE).orElseThrow().into().time().earliest();
  }

  private Instant out() {
    return judged.endOf(Step.SMOKE).earliest();
  }
}
