package org.flitchbook.account;

import java.util.List;
import java.util.Optional;
import org.flitchbook.input.Place;
import org.flitchbook.lot.Lot;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.measure.Unit;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;
import org.flitchbook.sums.Exposure;

/**
 * How long a lot was in the warm in all, which no limit of a single step adds up. The levels are
 * those of the product's own limits; the time is counted at its worse end.
 *
 * @param watched the steps in their order
 * @param betweenSteps the longest times from the end of a step to the beginning of the next that no
 *     probe in the meat saw, in min; all of it counts as warm
 * @param total one for each band
 * @param missing the hazard controls of which the product has no limit that gives a band
 */
public record TimeAbove(
    List<Band> bands,
    List<Watched> watched,
    Quantity betweenSteps,
    List<Inside> total,
    List<String> missing) {

  /**
   * Temperatures between which the time is added up.
   *
   * @param to empty where the band is open
   */
  public record Band(Quantity from, Optional<Quantity> to) {}

  /**
   * What was watched through a step, or through several that share their probes.
   *
   * @param counts whether it counts in the total
   * @param probes empty where nothing was recorded
   */
  public record Watched(List<Step> steps, What what, boolean counts, List<Probe> probes) {}

  /**
   * One probe.
   *
   * @param times one for each band
   * @param place of its readings
   */
  public record Probe(String probe, List<Inside> times, Place place) {}

  /** The time inside a band; as {@link Exposure}, in min. */
  public record Inside(
      Quantity longest, Quantity unseen, boolean beginsInside, boolean stillInside) {
    static Inside of(Exposure time) {
      return new Inside(
          minutes(time.longest()), minutes(time.unseen()), time.beginsInside(), time.running());
    }
  }

  static TimeAbove of(Lot lot) {
    return new WarmTime(lot).timeAbove();
  }

  static Quantity minutes(long millis) {
    return new Quantity(Ratio.of(millis, 60_000), Unit.MINUTE);
  }
}
