package org.flitchbook.account;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.LongSummaryStatistics;
import java.util.Optional;
import java.util.function.IntBinaryOperator;
import java.util.function.IntToLongFunction;
import java.util.stream.IntStream;
import org.flitchbook.input.Place;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Level;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.measure.Unit;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;
import org.flitchbook.sums.Curve;
import org.flitchbook.sums.Shift;

/**
 * What a probe read of a lot through a step.
 *
 * @param track the readings themselves, which JSON leaves to the evidence
 * @param probe its name, or "hand"
 * @param instrument empty where no log was kept
 * @param origin the log's file and column; where no log was kept, the first entry
 * @param every the usual time between two readings, in s; empty where no log was kept
 * @param above how far the truth may lie above what was read, and {@code below} how far below: the
 *     instrument's accuracy, and its known error where that counts against the lot
 * @param lowest the first of the lowest readings, and {@code highest} the first of the highest
 * @param leftOut the readings that were left out of the curve
 */
public record ProbeReadings(
    Track track,
    Step step,
    What what,
    String probe,
    String instrument,
    Place origin,
    int count,
    Optional<Quantity> every,
    Quantity above,
    Quantity below,
    Reading first,
    Reading lowest,
    Reading highest,
    Reading last,
    List<Gap> gaps,
    List<LeftOut> leftOut) {

  /** One reading, as it was written. */
  public record Reading(Instant at, Quantity level, boolean byHand, Place place) {
    private static Reading of(Track track, int index, Unit unit) {
      return new Reading(
          Instant.ofEpochMilli(track.earliest(index)),
          Level.quantity(track.level(index, Shift.AS_WRITTEN), unit),
          track.byHand(index),
          track.place(index));
    }
  }

  /** A time in which the log was silent, or of which readings were left out; its length in min. */
  public record Gap(Instant from, Instant until, Quantity length, boolean leftOut) {}

  /** Readings left out one after the other by the same rule; the place is that of the first. */
  public record LeftOut(
      Instant from,
      Instant until,
      int count,
      Quantity lowest,
      Quantity highest,
      String why,
      Place place) {}

  static ProbeReadings of(Lot.StepTrack of, Unit temperature) {
    Track track = of.track();
    Unit unit = track.unit().dimension() == Dimension.SHARE ? Unit.PERCENT : temperature;
    IntToLongFunction level = index -> track.level(index, Shift.AS_WRITTEN);
    long written = level.applyAsLong(0);
    return new ProbeReadings(
        track,
        of.step(),
        track.what(),
        track.called(),
        track.instrument(),
        track.origin(),
        track.size(),
        Optional.of(track.interval())
            .filter(millis -> millis > 0)
            .map(millis -> new Quantity(Ratio.of(millis, 1000), Unit.SECOND)),
        Level.difference(track.level(0, Shift.UP) - written, unit),
        Level.difference(written - track.level(0, Shift.DOWN), unit),
        Reading.of(track, 0, unit),
        Reading.of(track, first(track, index -> -level.applyAsLong(index)), unit),
        Reading.of(track, first(track, level), unit),
        Reading.of(track, track.size() - 1, unit),
        track.gaps().stream().map(gap -> gap(track, gap)).toList(),
        leftOut(track, unit));
  }

  private static int first(Track track, IntToLongFunction level) {
    IntBinaryOperator higher = (a, b) -> level.applyAsLong(b) > level.applyAsLong(a) ? b : a;
    return IntStream.range(0, track.size()).reduce(higher).orElseThrow();
  }

  private static Gap gap(Track track, Curve.Gap gap) {
    long from = track.earliest(gap.from());
    long until = track.earliest(gap.to());
    return new Gap(
        Instant.ofEpochMilli(from),
        Instant.ofEpochMilli(until),
        TimeAbove.minutes(until - from),
        track.excluded().stream().anyMatch(each -> from < each.at() && each.at() < until));
  }

  private static List<LeftOut> leftOut(Track track, Unit unit) {
    List<List<Track.Excluded>> runs = new ArrayList<>();
    String why = "";
    for (Track.Excluded each : track.excluded()) {
      if (runs.isEmpty() || !each.why().equals(why)) {
        runs.add(new ArrayList<>());
        why = each.why();
      }
      runs.get(runs.size() - 1).add(each);
    }
    return runs.stream().map(run -> leftOut(run, unit)).toList();
  }

  private static LeftOut leftOut(List<Track.Excluded> run, Unit unit) {
    LongSummaryStatistics levels =
        run.stream().mapToLong(Track.Excluded::level).summaryStatistics();
    return new LeftOut(
        Instant.ofEpochMilli(run.get(0).at()),
        Instant.ofEpochMilli(run.get(run.size() - 1).at()),
        run.size(),
        Level.quantity(levels.getMin(), unit),
        Level.quantity(levels.getMax(), unit),
        run.get(0).why(),
        run.get(0).place());
  }

  /** In which all levels are. */
  public Unit unit() {
    return first.level().unit();
  }

  /** The reading of that index. */
  public Reading reading(int index) {
    return Reading.of(track, index, unit());
  }

  public boolean isLog() {
    return every.isPresent();
  }
}
