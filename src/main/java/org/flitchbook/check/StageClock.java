package org.flitchbook.check;

import java.util.Optional;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Level;
import org.flitchbook.measure.Ratio;
import org.flitchbook.plan.Kind;
import org.flitchbook.sums.BandTime;
import org.flitchbook.sums.Shift;

/**
 * The times of one probe in one stage: as written, and with its uncertainty added and taken away.
 * In a rising stage the warm hours of the drying are counted in each of them.
 */
final class StageClock {

  private final Kind.Stage stage;
  private final Track track;
  private final long mostDrying;
  private final long leastDrying;
  private final BandTime written;
  private final BandTime up;
  private final BandTime down;

  StageClock(Kind.Stage stage, Track track, Optional<WarmDrying> drying) {
    this.stage = stage;
    this.track = track;
    this.mostDrying = drying.map(WarmDrying::most).orElse(0L);
    this.leastDrying = drying.map(WarmDrying::least).orElse(0L);
    this.written = clock(Shift.AS_WRITTEN);
    this.up = clock(Shift.UP);
    this.down = clock(Shift.DOWN);
  }

  private BandTime clock(Shift shift) {
    long from = Level.of(stage.from());
    long to = Level.of(stage.to());
    BandTime inBand =
        stage.falling()
            ? BandTime.falling(track, shift, from, to)
            : BandTime.rising(track, shift, from, to);
    return inBand.plus(mostDrying, leastDrying);
  }

  BandTime written() {
    return written;
  }

  /** In ms. */
  long limit() {
    return stage.atMost().inBase().times(Ratio.of(1000)).floor().longValueExact();
  }

  /** Whether the curve meets the stage as written and with its uncertainty either way. */
  boolean isMet() {
    return isMet(up) && isMet(down) && isMet(written);
  }

  private boolean isMet(BandTime time) {
    return time.state() == BandTime.State.DONE && time.longest() <= limit();
  }

  /** The clock that is printed: the worse one where both crossings were seen, else as written. */
  BandTime shown() {
    return written.state() == BandTime.State.DONE ? worse() : written;
  }

  /** In ms, what is printed of it: the longest where both crossings were seen, else the least. */
  long value() {
    return written.state() == BandTime.State.DONE ? worse().longest() : written.shortest();
  }

  /** The shifted curve that counts: the one that takes longer, running before done. */
  BandTime worse() {
    if (up.state() != down.state()) {
      return up.state() == BandTime.State.RUNNING ? up : down;
    }
    return up.longest() >= down.longest() ? up : down;
  }

  /** In ms, the least that the readings allow: straight lines, and less where a gap hides more. */
  long kindest() {
    long lines = written.interpolated().orElse(written.longest());
    return written.gap() ? Math.min(lines, written.shortest()) : lines;
  }

  /**
   * Whether the stage is missed only by hours of the drying that the readings may or may not be.
   */
  boolean isMissedByDryingAlone() {
    return mostDrying > leastDrying && written.longest() - mostDrying + leastDrying <= limit();
  }

  /** In ms. */
  long mostDrying() {
    return mostDrying;
  }

  /** In ms. */
  long leastDrying() {
    return leastDrying;
  }
}
